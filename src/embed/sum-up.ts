import { type Guide, type Journal, replay, standingOf } from "../session/index.ts";
import { type Handover, handoverOf, type Texts } from "../turn/index.ts";
import { isMissing, type Missing } from "./missing.ts";
import { saidIn } from "./said-in.ts";

export type SumUpMeans = {
  guide: Guide;
  texts: Texts;
  now: string;
  /** Loads a scenario that the journal comes to. */
  load(missing: Missing): Promise<void>;
  /** What the plate says beside the model number, where it was read. */
  plate?: { variant?: string | undefined; serial?: string | undefined };
};

/** A journal on a page: it is replayed for that, and nothing of it is kept, gone on with or written.
 * @throws Error where a scenario of it can't be loaded */
export async function sumUp(
  journal: Journal,
  { guide, texts, now, load, plate = {} }: SumUpMeans,
): Promise<Handover> {
  for (;;)
    try {
      const { session } = replay(guide, standingOf(journal).log);
      return handoverOf(session, texts, now, { said: saidIn(journal, texts), ...plate });
    } catch (problem) {
      if (!isMissing(problem)) throw problem;
      await load(problem);
    }
}
