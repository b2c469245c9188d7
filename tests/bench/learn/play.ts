import { compileFlow, guideOf, inRegion } from "../../../src/compile/index.ts";
import { createInsight } from "../../../src/embed/insight.ts";
import { type Flow, regionIn } from "../../../src/guide/index.ts";
import { createTexts, endingOf } from "../../../src/turn/index.ts";
import { readLocales } from "../../../src/workbench/build/index.ts";
import { type Apart, drawHome, type Outcome, outcomeOf, talk, type Visit } from "../world/index.ts";

/** One home as it went: how it is judged, and what the panel would send of it. */
export type Played = Pick<Outcome, "seed" | "verdict" | "wrongParts" | "minutes" | "faults"> & {
  /** Gates, waits and the model number are no checks. */
  checks: number;
  /** Whether the first cause that the ending names, where it names one, is there. */
  firstRight: boolean;
  line: string;
};

/** Plays homes by their seeds with what a flow knows. */
export function createPlay(flow: Flow, world: Apart): (seed: string) => Played {
  const guide = guideOf(inRegion(compileFlow(flow), regionIn(flow.regions, "en-GB")));
  const texts = createTexts(readLocales(), "en-GB", guide.flow);
  return (seed) => {
    const visit = talk(guide, texts, drawHome(seed, false, world), false);
    const { verdict, wrongParts, minutes, faults } = outcomeOf(visit);
    return {
      ...{ seed, verdict, wrongParts, minutes, faults },
      checks: visit.turns.filter(({ turn }) => !/^opening\.|\.gate-|^part\./.test(turn)).length,
      firstRight: isFirstRight(visit),
      line: lineOf(visit, texts),
    };
  };
}

/** What came of a whole search counts, so a fault that was put right on the way is named truly as well. */
function isFirstRight({ home, ending, state }: Visit): boolean {
  const [first] = ending?.causes ?? [];
  if (ending?.outcome === "fixed") return !home.faults.some((fault) => fault.isThere(state));
  return home.faults.some(({ names }) => first !== undefined && names.includes(first));
}

/** The line that the panel sends at an ending, by what writes it there. */
function lineOf({ session, ending }: Visit, texts: ReturnType<typeof createTexts>): string {
  let sent = "";
  if (!session || !ending) return sent;
  const beacon = (_: string, body: string) => {
    sent = body.trim();
    return true;
  };
  const insight = createInsight("/collect", () => true, { beacon, post: async () => true, later: () => {} });
  const outcome = ending.outcome as "fixed" | "later" | "part" | "professional" | "stopped";
  const { causeId, part } = endingOf(session, outcome, texts);
  const detail = { outcome, cause: causeId, part: part?.kind ?? null, model: null };
  insight.hears("fridgeside-ended", detail, session);
  return sent;
}
