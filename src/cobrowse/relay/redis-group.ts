import type { Answer } from "./redis-line.ts";

type Given = (string | number)[];
type Waiting = {
  keys: string[];
  given: Given;
  done: (answer: Answer[]) => void;
  failed: (problem: unknown) => void;
};

/** So many drafts go into one call at most: while it runs, Redis does nothing else. */
const most = 64;
/** Milliseconds that the first of a call waits for others, which nobody notices and which is half of the cost of a call. */
const gather = 3;

/**
 * Gathers what comes while Redis is busy with what came before: it goes in one call, as a file is synced once for all
 * who wait. What fails, fails for all of a call, and is asked again by each.
 * @param run makes the call; resolves with an answer for each
 */
export function createRedisGroup(run: (keys: string[], given: Given) => Promise<Answer>): {
  add(keys: string[], given: Given): Promise<Answer[]>;
} {
  const waiting: Waiting[] = [];
  let isBusy = false;
  const work = async () => {
    while (waiting.length) {
      await new Promise((done) => setTimeout(done, gather));
      const now = waiting.splice(0, most);
      try {
        const answers = (await run(
          now.flatMap(({ keys }) => keys),
          now.flatMap(({ given }) => given),
        )) as Answer[][];
        for (const [place, { done }] of now.entries()) done(answers[place] ?? []);
      } catch (problem) {
        for (const { failed } of now) failed(problem);
      }
    }
    isBusy = false;
  };
  return {
    add: (keys, given) =>
      new Promise((done, failed) => {
        waiting.push({ keys, given, done, failed });
        if (isBusy) return;
        isBusy = true;
        void work();
      }),
  };
}
