import { type Complain, readBoundedText } from "../loading/index.ts";
import { factsKey, type OwnWords, readOwnWords, wordsBounds } from "./own-words.ts";
import { readShopFacts, type ShopFacts } from "./shop-facts.ts";

export { putOwnWords } from "./own-words.ts";

/** A shop's file, read: its own words in one language, and its facts. */
export type ShopFile = { words: OwnWords; facts: ShopFacts };

/**
 * Fetches a shop's own words and facts. Never rejects and never takes long: where they don't come, can't be read or are too many,
 * there are none.
 * @returns null where it may be better next time
 */
export async function ownWordsAt(
  address: string,
  language: string,
  complain: Complain,
  get: typeof fetch = (...given) => fetch(...given),
): Promise<ShopFile | null> {
  const { bytes, seconds } = wordsBounds;
  const ignore = (why: string) => complain(`attribute "words": our words are used, because ${why}.`);
  try {
    const response = await get(address, { signal: AbortSignal.timeout(seconds * 1000) });
    if (!response.ok) throw new Error(`the server said ${response.status}`);
    const read = await readBoundedText(response, bytes);
    if (read) {
      const json = JSON.parse(read.text);
      return { words: readOwnWords(json, language, complain), facts: readShopFacts(factsIn(json), complain) };
    }
    ignore(`the file has more than ${bytes} bytes`);
    return { words: {}, facts: {} };
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

const factsIn = (json: unknown): unknown =>
  typeof json === "object" && json !== null && Object.hasOwn(json, factsKey)
    ? (json as Record<string, unknown>)[factsKey]
    : undefined;
