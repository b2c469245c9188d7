import fc from "fast-check";
import { compileGuide } from "../../src/compile/index.ts";
import {
  createJournal,
  memoryOf,
  metaOf,
  parseJournal,
  replay,
  type Session,
  standingOf,
  startSession,
} from "../../src/session/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { at } from "./drive.ts";
import { factsOf, isTrue } from "./facts.ts";
import { copyOf, diceOf, isOver, type Step, standOf, wander } from "./walker.ts";

const flow = readFlow();
const guide = compileGuide(flow);

export type Walk = { start: Session; steps: Step[]; last: Session };

/** Random walks, the same ones every time and one at a time, each up to an ending or a limit of steps. */
export function* takeWalks(count: number, seed: number, wandering: boolean, most: number): Generator<Walk> {
  const numbers = fc.array(fc.nat(0xffff), { minLength: 200, maxLength: 400, size: "max" });
  for (const throws of fc.sample(numbers, { seed, numRuns: count })) {
    const dice = diceOf(throws);
    const start = startSession(guide, at(0), dice(2) ? "TR-01" : null);
    const steps: Step[] = [];
    const journal = createJournal(start.log.started, start.log.model);
    let last = { session: start, standing: standingOf(journal) };
    let minutes = 0;
    while (steps.length < most && !isOver(last.session)) {
      minutes += dice(20) ? dice(10) : dice(3000);
      const step = wander(last, minutes, dice, wandering);
      steps.push(step);
      last = step;
    }
    yield { start, steps, last: last.session };
  }
}

/** How a walk went, for the message of a test that fails. */
export function story({ start, steps }: Walk): string {
  const turns = [start, ...steps.map(({ session }) => session)].map((session) => metaOf(session).turn);
  return turns.map((turn, place) => `${turn}: ${steps[place]?.did ?? "the end"}`).join("\n");
}

/** The hazards that lay open at some turn of the walk, and how many hazardous turns it met. */
export function hazardsOf(walk: Walk): { open: string[]; met: number } {
  let covered = new Set<string>();
  let before = walk.start;
  let met = 0;
  for (const { session, newVisit } of walk.steps) {
    const { check, turn } = metaOf(session);
    if (newVisit || check !== metaOf(before).check) covered = new Set();
    else for (const hazard of confirmedBy(session, metaOf(before).gate)) covered.add(hazard);
    const hazards = dangersOf(session);
    const open = hazards.filter((hazard) => !covered.has(hazard));
    if (open.length) return { open: [turn, ...open], met };
    if (hazards.length) met++;
    before = session;
  }
  return { open: [], met };
}

/** The hazards of the session's turn that need a gate, from the data of its check and not from the chart. */
function dangersOf(session: Session): string[] {
  const { check, gate } = metaOf(session);
  const rule = gate ? undefined : flow.checks[check ?? ""];
  const accesses = [rule?.access, flow.stations.access[rule?.station ?? ""]];
  const all = accesses.flatMap((access) => flow.access[access ?? ""] ?? []).concat(rule?.hazards ?? []);
  return rule ? all.filter((hazard) => flow.hazards[hazard]?.gate === "required") : [];
}

/** What the last event of the log confirmed at this gate: nothing unless every single item was ticked. */
function confirmedBy(session: Session, gate: string | undefined): string[] {
  const event = session.log.events.at(-1);
  const rule = flow.gates[gate ?? ""];
  const ready =
    event?.type === "answered" && event.turn.endsWith(`.gate-${gate}`) && event.answer === "ready";
  const ticked = ready && rule?.items.every((item) => event.items?.includes(item));
  return ticked ? (rule?.covers ?? []) : [];
}

/** The cause that a walk ended with, and whether the log proves it; null where it ended with none. */
export function causeOf(last: Session): { cause: string | null; proved: boolean } | null {
  const { kind, outcome } = metaOf(last);
  const { cause } = memoryOf(last);
  const part = outcome === "part" || kind === "model";
  if (!part && !(outcome === "professional" && cause)) return null;
  const facts = factsOf(last.log, flow);
  const proof = flow.causes[cause ?? ""]?.proof;
  return { cause, proved: proof ? isTrue(proof, facts, flow) : !part && facts.found.has(cause ?? "") };
}

/** Whether the replay of its journal, as it comes back from storage, leads to where a session is. */
export function isReplayOf({ session: live, standing }: Step): boolean {
  const journal = parseJournal(copyOf(standing.journal));
  if (!journal) return false;
  const { session, dropped } = replay(guide, standingOf(journal).log);
  return dropped === 0 && standOf(session) === standOf(live);
}
