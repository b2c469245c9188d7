import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { createCharts } from "../../src/flow/index.ts";
import { memoryOf, metaOf, record, replay, type Session, startSession } from "../../src/session/index.ts";
import { at } from "./drive.ts";
import { factsOf, isTrue } from "./facts.ts";
import { copyOf, diceOf, isOver, type Step, standOf, wander } from "./walker.ts";

const flow = readFlow();
const charts = createCharts(flow);

type Walk = { start: Session; steps: Step[]; last: Session };

/** Random walks, the same ones every time and one at a time, each up to an ending or a limit of steps. */
function* takeWalks(count: number, seed: number, wandering: boolean, most: number): Generator<Walk> {
  const numbers = fc.array(fc.nat(0xffff), { minLength: 200, maxLength: 400, size: "max" });
  for (const throws of fc.sample(numbers, { seed, numRuns: count })) {
    const dice = diceOf(throws);
    const start = startSession(flow, at(0), dice(2) ? "TR-01" : null, charts);
    const steps: Step[] = [];
    let last = start;
    let minutes = 0;
    while (steps.length < most && !isOver(last)) {
      minutes += dice(20) ? dice(10) : dice(3000);
      const step = wander(last, minutes, dice, wandering);
      steps.push(step);
      last = step.session;
    }
    yield { start, steps, last };
  }
}

/** How a walk went, for the message of a test that fails. */
function story({ start, steps }: Walk): string {
  const turns = [start, ...steps.map(({ session }) => session)].map((session) => metaOf(session).turn);
  return turns.map((turn, place) => `${turn}: ${steps[place]?.did ?? "the end"}`).join("\n");
}

describe("2,000 people who answer anything, come and go, and change their answers", () => {
  const ungated: string[] = [];
  const unproved: string[] = [];
  const askedPastProof: string[] = [];
  const strayed: string[] = [];
  const causes = new Set<string | null>();
  let hazardsMet = 0;

  beforeAll(() => {
    let count = 0;
    for (const walk of takeWalks(2000, 77, true, 80)) {
      const { open, met } = hazardsOf(walk);
      hazardsMet += met;
      if (open.length) ungated.push(`${open}\n${story(walk)}`);
      const ending = causeOf(walk.last);
      if (ending) causes.add(ending.cause);
      if (ending && !ending.proved) unproved.push(`${ending.cause}\n${story(walk)}`);
      const late = provedBeforeNextCheck(walk);
      if (late.length) askedPastProof.push(`${late}\n${story(walk)}`);
      // Replaying after every single step costs the square of the steps: the last one will do for most.
      const replayed = count++ < 60 ? walk.steps.map(({ session }) => session) : [walk.last];
      if (!replayed.every(isReplayOf)) strayed.push(story(walk));
    }
  }, 300_000);

  test("meet no hazardous turn but behind its gates, confirmed in that very visit", () => {
    expect(ungated).toEqual([]);
    // They did come to hazardous turns, else this would prove nothing.
    expect(hazardsMet).toBeGreaterThan(1000);
  });

  test("end with no cause unless its proof is in the log", () => {
    expect(unproved).toEqual([]);
    expect(causes.size).toBeGreaterThan(8);
  });

  test("are asked no further check once a cause is proved", () => {
    expect(askedPastProof).toEqual([]);
  });

  test("are always where the replay of their log would be, whatever they did last", () => {
    expect(strayed).toEqual([]);
  });
});

describe("1,000 people who only answer", () => {
  const unended: string[] = [];
  const askedTwice: string[] = [];
  const garbled: string[] = [];
  const strayed: string[] = [];
  let refusals = 0;

  beforeAll(() => {
    for (const walk of takeWalks(1000, 79, false, 1000)) {
      const { events } = walk.last.log;
      if (!isOver(walk.last) || events.length > 60) unended.push(story(walk));
      const asked = events.flatMap((event) => ("turn" in event ? [event.turn] : []));
      const twice = asked.filter((turn, place) => asked.indexOf(turn) < place);
      if (twice.some((turn) => !flow.checks[turn.split(".")[0] ?? ""]?.repeats))
        askedTwice.push(`${twice}\n${story(walk)}`);
      let again = walk.start;
      let before = 0;
      for (const { session, refused } of walk.steps) {
        const { length } = session.log.events;
        if (length !== before + (refused ? 0 : 1)) garbled.push(story(walk));
        const event = session.log.events.at(-1);
        if (refused) refusals++;
        else if (event) again = record(again, copyOf(event)).session;
        if (standOf(again) !== standOf(session)) strayed.push(story(walk));
        before = length;
      }
    }
  }, 300_000);

  test("come to an ending within 60 answers, never stuck", () => {
    expect(unended).toEqual([]);
  });

  test("are never asked the same turn twice, but for checks that repeat", () => {
    expect(askedTwice).toEqual([]);
  });

  test("add one event to the log with every answer that is taken, and none with one that is refused", () => {
    expect(garbled).toEqual([]);
    expect(refusals).toBeGreaterThan(100);
  });

  test("pass through the very same states when their log is replayed event by event", () => {
    expect(strayed).toEqual([]);
  });
});

/** The hazards that lay open at some turn of the walk, and how many hazardous turns it met. */
function hazardsOf(walk: Walk): { open: string[]; met: number } {
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
function causeOf(last: Session): { cause: string | null; proved: boolean } | null {
  const { kind, outcome } = metaOf(last);
  const { cause } = memoryOf(last);
  const part = outcome === "part" || kind === "model";
  if (!part && !(outcome === "professional" && cause)) return null;
  const facts = factsOf(last.log, flow);
  const proof = flow.causes[cause ?? ""]?.proof;
  return { cause, proved: proof ? isTrue(proof, facts, flow) : !part && facts.found.has(cause ?? "") };
}

/** The scenario that a session is in, by the outermost state of its chart. */
function scenarioOf({ snapshot }: Session): string {
  return typeof snapshot.value === "string" ? snapshot.value : (Object.keys(snapshot.value)[0] ?? "");
}

/** Causes that were proved when yet another check was begun. */
function provedBeforeNextCheck(walk: Walk): string[] {
  let check: string | null = null;
  for (const { session } of walk.steps) {
    const meta = metaOf(session);
    if (meta.check && meta.check !== check) {
      const { proofs = [] } = flow.scenarios[scenarioOf(session)] ?? {};
      const facts = factsOf(session.log, flow);
      const proved = proofs.filter((id) => isTrue(flow.causes[id]?.proof ?? { any: [] }, facts, flow));
      if (proved.length) return [meta.turn, ...proved];
    }
    check = meta.check;
  }
  return [];
}

function isReplayOf(live: Session): boolean {
  const { session, dropped } = replay(flow, copyOf(live.log), charts);
  return dropped === 0 && standOf(session) === standOf(live);
}
