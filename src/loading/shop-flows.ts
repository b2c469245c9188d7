import { type BuiltIn, checkPack } from "../pack/index.ts";
import { readBoundedText } from "./bounded-text.ts";
import type { OwnFlows } from "./engine-data.ts";
import { nextTask } from "./pace/index.ts";

/** Bytes of a pack at most: ours has a good million (judgement). */
const mostBytes = 5_000_000;

/** Seconds before the built-in flows are used; the panel waits for this file. */
const PATIENCE_SECONDS = 15;

/**
 * Fetches a shop's own flows, as `fridgeside pack` wrote them, and proves at the door that a panel can run on them:
 * shape, names, texts, gates, and the first question of every scenario.
 * @param folder an absolute address
 * @param built what the panel runs on otherwise; hazards are judged by it
 * @throws Error in words for the page's developer where they cannot be used: one sentence, without its full stop
 */
export async function fetchShopFlows(
  folder: string,
  language: string,
  built: BuiltIn,
  get: typeof fetch,
): Promise<OwnFlows> {
  const address = new URL(`${language}.json`, folder.replace(/\/?$/, "/")).href;
  const about = (problem: unknown) =>
    new Error(`${address} ${problem instanceof Error ? problem.message : "cannot be used"}`);
  const response = await get(address, { signal: AbortSignal.timeout(PATIENCE_SECONDS * 1000) }).catch(() => {
    throw about(new Error("cannot be reached"));
  });
  if (!response.ok) throw about(new Error(`was answered with ${response.status}`));
  try {
    const steps = checkPack(await readPack(response), language, built);
    let step = steps.next();
    while (!step.done) {
      // All of them at once would hold up a slow phone.
      await nextTask();
      step = steps.next();
    }
    const { start, scenarios, format, resources } = step.value;
    return { start: { ...start, format, resources, files: {} }, scenarios };
  } catch (problem) {
    throw about(problem);
  }
}

async function readPack(response: Response): Promise<unknown> {
  const read = await readBoundedText(response, mostBytes);
  if (!read) throw new Error(`is larger than ${mostBytes} bytes`);
  try {
    return JSON.parse(read.text);
  } catch {
    throw new Error("is no JSON");
  }
}
