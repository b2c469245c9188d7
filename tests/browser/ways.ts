import type { Log, Session } from "../../src/session/index.ts";
import { openKept, sources } from "../kept-once.ts";
import type { Answers } from "../session/drive.ts";
import { reach } from "../session/reach.ts";

/** Looking for a way takes longer than walking it on a screen: each is looked for once, by all runs of the same sources. */
const keptWays = openKept("ways", [...sources, "tests/session", "tests/compile"]);

/** The log of a session that went on from here to a turn, as reach.ts finds it; the same for the same acts of a day. */
export function wayTo(start: Session, turn: string, answers: Answers = {}, cause?: string): Log {
  const { started, model, events } = start.log;
  const acts = events.map(({ at: _, ...event }) => event);
  const key = JSON.stringify([started.slice(0, 10), model, acts, turn, answers, cause]);
  return keptWays.read<Log>(key) ?? keptWays.keep(key, reach(start, turn, answers, cause).log);
}
