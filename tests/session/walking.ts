import fc from "fast-check";
import { changedIn } from "../../src/chart/index.ts";
import { statesIn } from "../../src/guide/index.ts";
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
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { at } from "./drive.ts";
import { factsOf, isTrue } from "./facts.ts";
import { copyOf, diceOf, isOver, type Step, standOf, wander } from "./walker.ts";

const flow = ownFlow;
const guide = guideFor(flow);

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
  let full = new Map<string, string>();
  let before = walk.start;
  let met = 0;
  for (const { session, newVisit } of walk.steps) {
    const { check, turn } = metaOf(session);
    if (newVisit) full = new Map();
    if (newVisit || check !== metaOf(before).check) covered = new Set();
    else for (const hazard of confirmedBy(session, metaOf(before).gate, full)) covered.add(hazard);
    for (const gate of full.keys()) if (!isStillSo(session, gate)) full.delete(gate);
    const hazards = dangersOf(session);
    const open = hazards.filter((hazard) => !covered.has(hazard)).concat(wrongStates(session));
    if (open.length) return { open: [turn, ...open], met };
    if (hazards.length) met++;
    before = session;
  }
  return { open: [], met };
}

/** The hazards of the session's turn that need a gate, from the data of its check and not from the chart. */
function dangersOf(session: Session): string[] {
  const { check, gate, turn } = metaOf(session);
  const rule = gate ? undefined : flow.checks[check ?? ""];
  const own = rule?.turns[turn.split(".")[1] ?? ""];
  const accesses = [own?.access ?? rule?.access, flow.stations.access[rule?.station ?? ""]];
  const all = accesses
    .flatMap((access) => flow.access[access ?? ""] ?? [])
    .concat(rule?.hazards ?? [], own?.hazards ?? []);
  // A question before the gates of its check is asked where nobody has moved yet.
  const first = own?.access === "inside" ? [] : all;
  return rule ? first.filter((hazard) => flow.hazards[hazard]?.gate === "required") : [];
}

/** The hazards of the session's turn that are met in another state than the one in which alone they may be. */
function wrongStates(session: Session): string[] {
  const { prepared } = memoryOf(session);
  return dangersOf(session).filter((hazard) =>
    statesIn(flow.hazards[hazard]?.needs).some(([one, state]) => prepared[one]?.is !== state),
  );
}

/** True while all that a gate leaves is so. */
function isStillSo(session: Session, gate: string): boolean {
  const { prepared } = memoryOf(session);
  return statesIn(flow.gates[gate]?.leaves).every(([one, state]) => prepared[one]?.is === state);
}

/**
 * What the last event of the log confirmed at this gate: nothing unless every single item was ticked now, or a quarter
 * of an hour ago at the most and was so all the while.
 * @param full when each gate was confirmed in full in this visit; changed
 */
function confirmedBy(session: Session, gate: string | undefined, full: Map<string, string>): string[] {
  const event = session.log.events.at(-1);
  const rule = flow.gates[gate ?? ""];
  if (!gate || !rule || event?.type !== "answered") return [];
  if (!event.turn.endsWith(`.gate-${gate}`) || event.answer !== "ready") return [];
  if (rule.items.every((item) => event.items?.includes(item))) full.set(gate, event.at);
  const since = full.get(gate);
  return since && Date.parse(event.at) - Date.parse(since) <= 15 * 60_000 ? rule.covers : [];
}

/** What an ending leaves changed in the home and does not speak of, or a search of its own that leaves a tap closed. */
export function unsaidAt(last: Session): string[] {
  const { tells = [] } = metaOf(last);
  return changedIn(memoryOf(last)).filter((one) => !tells.includes(one));
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
