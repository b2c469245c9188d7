import { dataAddress } from "virtual:desk";
import { restoreChart } from "../chart/index.ts";
import { journalIn } from "../cobrowse/client/index.ts";
import { createScenarioFiles, type StartFile } from "../loading/index.ts";
import {
  createGuide,
  type Journal,
  parseJournal,
  ScenarioMissing,
  type Session,
  standingOf,
  takeOver,
} from "../session/index.ts";
import { createTexts, greetedView, type Resource, type Texts, type View, viewOf } from "../turn/index.ts";

/** A conversation as the householder's device has it: its journal, the session that it makes, and what is on their screen. */
export type Followed = { journal: Journal; session: Session; view: View };

/** What a desk reads conversations by, in one language. */
export type DeskGuide = {
  texts: Texts;
  /**
   * Follows what a room carries. Null where that is no journal yet.
   * @throws Error where a scenario does not come
   */
  follow(carried: readonly string[], now: string): Promise<Followed | null>;
};

/**
 * Fetches what conversations are read by, from where the panel's lies.
 * @param own the desk's own texts
 * @throws Error where it does not come
 */
export async function openDeskGuide(language: string, own: Resource, get: typeof fetch): Promise<DeskGuide> {
  const response = await get(dataAddress(language));
  if (!response.ok) throw new Error(`${response.status} for the texts of ${language}`);
  const data = (await response.json()) as StartFile;
  const guide = createGuide({ ...data, chart: restoreChart(data.chart) });
  const texts = createTexts(data.resources, language, data.flow);
  texts.add(own);
  const beside = (file: string) => new URL(file, dataAddress(language)).href;
  const addresses = Object.fromEntries(Object.entries(data.files).map(([id, file]) => [id, beside(file)]));
  const scenarios = createScenarioFiles(addresses, { guide, language, texts }, get);
  return {
    texts,
    async follow(carried, now) {
      const journal = parseJournal(journalIn(carried));
      if (!journal) return null;
      const { log, held } = standingOf(journal);
      // Their clock and ours may differ: times are held against the last one of their own.
      const last = log.events.at(-1)?.at ?? log.started;
      for (;;)
        try {
          const { session } = takeOver(guide, log, last);
          return {
            journal,
            session,
            view: greetedView(viewOf(session, texts, now, []), session, held, texts),
          };
        } catch (problem) {
          if (!(problem instanceof ScenarioMissing)) throw problem;
          await scenarios.load(problem.scenario);
        }
    },
  };
}
