import { readBoundedText } from "./bounded-text.ts";
import type { Complain } from "./complain.ts";
import { nextTask } from "./pace/index.ts";

/**
 * Bytes above which a catalogue belongs in many files. On slow 4G (1.6 Mbit/s, the bench's) a megabyte takes five
 * seconds, where one file of many takes a fraction of a second.
 */
export const HEAVY_BYTES = 1_000_000;

/**
 * Bytes above which a catalogue in one file is not read: a phone would download and read for a minute, beside a fridge
 * (judgement).
 */
export const TOO_HEAVY_BYTES = 10_000_000;

/** Characters that `JSON.parse` reads at once without a slow phone's noticing: a step of json-in-steps.ts. */
const AT_ONCE_CHARACTERS = 64 * 1024;

/**
 * The JSON of an answer, read in short steps. One that is too long is given up as soon as that is known, before the
 * rest of it is paid for.
 * @throws Error "too-heavy" or "unusable"
 */
export async function readJson(
  response: Response,
  address: string,
  complain: Complain,
): Promise<{ json: unknown; bytes: number }> {
  const read = await readBoundedText(response, TOO_HEAVY_BYTES);
  if (!read) throw new Error("too-heavy");
  const { text, bytes } = read;
  if (/^\s*</.test(text)) {
    complain(`${address} sent a web page where JSON was expected.`);
    throw new Error("unusable");
  }
  try {
    if (text.length <= AT_ONCE_CHARACTERS) return { json: JSON.parse(text), bytes };
    const { parseJsonInSteps } = await import("./for-some-shops.ts");
    const steps = parseJsonInSteps(text);
    let step = steps.next();
    while (!step.done) {
      await nextTask();
      step = steps.next();
    }
    return { json: step.value, bytes };
  } catch (problem) {
    if (!(problem instanceof SyntaxError)) throw problem;
    complain(`${address} is not JSON: ${problem.message}`);
    throw new Error("unusable");
  }
}
