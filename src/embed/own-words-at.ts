import { type Complain, readBoundedText } from "../loading/index.ts";
import { type OwnWords, readOwnWords, wordsBounds } from "./own-words.ts";

export { putOwnWords } from "./own-words.ts";

/**
 * Fetches a shop's own words. Never rejects and never takes long: where they don't come, can't be read or are too many,
 * there are none.
 * @returns null where it may be better next time
 */
export async function ownWordsAt(
  address: string,
  language: string,
  complain: Complain,
  get: typeof fetch = (...given) => fetch(...given),
): Promise<OwnWords | null> {
  const { bytes, seconds } = wordsBounds;
  const ignore = (why: string) => complain(`attribute "words": our words are used, because ${why}.`);
  try {
    const response = await get(address, { signal: AbortSignal.timeout(seconds * 1000) });
    if (!response.ok) throw new Error(`the server said ${response.status}`);
    const read = await readBoundedText(response, bytes);
    if (read) return readOwnWords(JSON.parse(read.text), language, complain);
    ignore(`the file has more than ${bytes} bytes`);
    return {};
  } catch (problem) {
    const { name, message } = problem as Error;
    ignore(
      name === "TimeoutError"
        ? `the file did not come within ${seconds} seconds`
        : name === "SyntaxError"
          ? "the file is not JSON"
          : message,
    );
    return null;
  }
}
