import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { createChart } from "../../src/flow/index.ts";
import { memoryOf, metaOf, record, replay, type Session, startSession } from "../../src/session/index.ts";
import { at } from "./drive.ts";
import { factsOf, isTrue } from "./facts.ts";
import { copyOf, diceOf, isOver, type Step, standOf, wander } from "./walker.ts";

const flow = readFlow();
const chart = createChart(flow);

type Walk = { start: Session; steps: Step[]; last: Session };

/** Random walks, the same ones every time, each up to an ending or a limit of steps. */
function takeWalks(count: number, seed: number, wandering: boolean, most: number): Walk[] {
  const numbers = fc.array(fc.nat(0xffff), { minLength: 200, maxLength: 400, size: "max" });
  return fc.sample(numbers, { seed, numRuns: count }).map((throws) => {
    const dice = diceOf(throws);
    const start = startSession(flow, at(0), dice(2) ? "TR-01" : null, chart);
    const steps: Step[] = [];
    let last = start;
    let minutes = 0;
    while (steps.length < most && !isOver(last)) {
      minutes += dice(20) ? dice(10) : dice(3000);
      const step = wander(last, minutes, dice, wandering);
      steps.push(step);
      last = step.session;
    }
    return { start, steps, last };
  });
}

/** How a walk went, for the message of a test that fails. */
function story({ start, steps }: Walk): string {
  let before = start;
  const told = steps.map(({ did, session }) => {
    const line = `${metaOf(before).turn}: ${did}`;
    before = session;
    return line;
  });
  return [...told, metaOf(before).turn].join("\n");
}

describe("2,500 people who answer anything, come and go, and change their answers", () => {
  let walks: Walk[] = [];
  beforeAll(() => {
    walks = takeWalks(2500, 77, true, 80);
  }, 120_000);

  test("meet no hazardous turn but behind its gates, confirmed in that very visit", () => {
    let met = 0;
    for (const walk of walks) {
      let covered = new Set<string>();
      let before = walk.start;
      for (const { session, newVisit } of walk.steps) {
        const { check, turn } = metaOf(session);
        if (newVisit || check !== metaOf(before).check) covered = new Set();
        else for (const hazard of confirmedBy(session, metaOf(before).gate)) covered.add(hazard);
        const open = dangersOf(session).filter((hazard) => !covered.has(hazard));
        if (open.length) throw new Error(`${turn} is open to ${open}:\n${story(walk)}`);
        if (dangersOf(session).length) met++;
        before = session;
      }
    }
    // They did come to hazardous turns, else this would prove nothing.
    expect(met).toBeGreaterThan(1000);
  });

  test("end with no cause unless its proof is in the log", () => {
    const ended = new Set<string>();
    for (const walk of walks) {
      const { kind, outcome } = metaOf(walk.last);
      const { cause } = memoryOf(walk.last);
      if (outcome !== "part" && kind !== "model" && !(outcome === "professional" && cause)) continue;
      const facts = factsOf(walk.last.log, flow);
      const proof = flow.causes[cause ?? ""]?.proof;
      const proved = cause && (proof ? isTrue(proof, facts, flow) : facts.found.has(cause));
      if (!proved) throw new Error(`"${cause}" was not proved:\n${story(walk)}`);
      ended.add(cause);
    }
    expect(ended.size).toBeGreaterThan(8);
  });

  test("are asked no further check once a cause is proved", () => {
    const { proofs = [] } = flow.scenarios["no-ice-plumbed"] ?? {};
    for (const walk of walks) {
      let check: string | null = null;
      for (const { session } of walk.steps) {
        const meta = metaOf(session);
        if (meta.check && meta.check !== check) {
          const facts = factsOf(session.log, flow);
          const proved = proofs.filter((id) => isTrue(flow.causes[id]?.proof ?? { any: [] }, facts, flow));
          if (proved.length) throw new Error(`${proved} is proved, but ${meta.turn} is asked:\n${story(walk)}`);
        }
        check = meta.check;
      }
    }
  });

  test("are always where the replay of their log would be, whatever they did last", () => {
    for (const walk of walks.slice(0, 150)) {
      for (const { session } of walk.steps) {
        const { session: replayed, dropped } = replay(flow, copyOf(session.log), chart);
        if (dropped || standOf(replayed) !== standOf(session))
          expect([dropped, standOf(replayed)], story(walk)).toEqual([0, standOf(session)]);
      }
    }
  }, 120_000);

  test("come to the same place in the end when their whole log is replayed", () => {
    for (const { last } of walks) {
      const { session, dropped } = replay(flow, copyOf(last.log), chart);
      if (dropped || standOf(session) !== standOf(last))
        expect([dropped, standOf(session)]).toEqual([0, standOf(last)]);
    }
  }, 120_000);
});

describe("1,500 people who only answer", () => {
  let walks: Walk[] = [];
  beforeAll(() => {
    walks = takeWalks(1500, 79, false, 1000);
  }, 120_000);

  test("come to an ending within 60 answers, never stuck", () => {
    for (const walk of walks)
      if (!isOver(walk.last) || walk.last.log.events.length > 60) throw new Error(story(walk));
  });

  test("are never asked the same turn twice, but for the wait for ice", () => {
    for (const walk of walks) {
      const asked = walk.last.log.events.flatMap((event) => ("turn" in event ? [event.turn] : []));
      const twice = asked.filter((turn, place) => asked.indexOf(turn) < place);
      const strange = twice.filter((turn) => !turn.startsWith("wait-for-ice."));
      if (strange.length) throw new Error(`${strange} came up twice:\n${story(walk)}`);
    }
  });

  test("are refused nothing silently: a refused answer leaves the log and the turn as they were", () => {
    let refused = 0;
    for (const walk of walks) {
      let before = walk.start;
      for (const step of walk.steps) {
        const grown = step.session.log.events.length - before.log.events.length;
        if (grown !== (step.refused ? 0 : 1)) throw new Error(story(walk));
        if (step.refused) refused++;
        before = step.session;
      }
    }
    expect(refused).toBeGreaterThan(100);
  });

  test("pass through the very same states when their log is replayed event by event", () => {
    for (const { start, steps } of walks.slice(0, 500)) {
      let again = start;
      for (const { session, refused } of steps) {
        const event = session.log.events.at(-1);
        if (refused || !event) continue;
        again = record(again, copyOf(event)).session;
        if (standOf(again) !== standOf(session)) expect(standOf(again)).toBe(standOf(session));
      }
    }
  }, 120_000);
});

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
  const ready = event?.type === "answered" && event.turn.endsWith(`.gate-${gate}`) && event.answer === "ready";
  const ticked = ready && rule?.items.every((item) => event.items?.includes(item));
  return ticked ? (rule?.covers ?? []) : [];
}
