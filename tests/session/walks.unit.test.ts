import fc from "fast-check";
import { expect, test } from "vitest";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { createChart } from "../../src/flow/index.ts";
import { memoryOf, metaOf, record, replay, type Session, startSession } from "../../src/session/index.ts";
import { at } from "./drive.ts";
import { factsOf, isTrue } from "./facts.ts";
import { copyOf, diceOf, isOver, type Step, standOf, wander } from "./walker.ts";

const flow = readFlow();
const chart = createChart(flow);
const numbers = fc.array(fc.nat(0xffff), { minLength: 20, maxLength: 400, size: "max" });

/** A whole walk, step after step, up to an ending or a limit of steps. */
function* walk(throws: readonly number[], wandering: boolean, most: number): Generator<Step, Session> {
  const dice = diceOf(throws);
  let session = startSession(flow, at(0), dice(2) ? "TR-01" : null, chart);
  let minutes = 0;
  for (let taken = 0; taken < most && !isOver(session); taken++) {
    minutes += dice(20) ? dice(10) : dice(3000);
    const step = wander(session, minutes, dice, wandering);
    session = step.session;
    yield step;
  }
  return session;
}

/** The hazards of the session's turn that need a gate, from the data of its check and not from the chart. */
function dangersOf(session: Session): string[] {
  const { check, gate } = metaOf(session);
  const rule = gate ? undefined : flow.checks[check ?? ""];
  const station = flow.stations.access[rule?.station ?? ""];
  return [rule?.access, station]
    .flatMap((access) => flow.access[access ?? ""] ?? [])
    .concat(rule?.hazards ?? [])
    .filter((hazard) => rule && flow.hazards[hazard]?.gate === "required");
}

test("whatever a person does, no hazardous turn is met but behind its gates, confirmed in that very visit", () => {
  let met = 0;
  fc.assert(
    fc.property(numbers, (throws) => {
      let check: string | null = null;
      let covered = new Set<string>();
      let before: Session | null = null;
      for (const { session, newVisit } of walk(throws, true, 120)) {
        const meta = metaOf(session);
        if (newVisit || meta.check !== check) covered = new Set();
        check = meta.check;
        const { gate } = before ? metaOf(before) : {};
        const last = session.log.events.at(-1);
        const ticked = flow.gates[gate ?? ""]?.items.every(
          (item) => last?.type === "answered" && last.items?.includes(item),
        );
        if (gate && ticked && !newVisit && last?.type === "answered" && last.answer === "ready")
          for (const hazard of flow.gates[gate]?.covers ?? []) covered.add(hazard);
        const open = dangersOf(session).filter((hazard) => !covered.has(hazard));
        if (open.length) throw new Error(`${meta.turn} is open to ${open}`);
        if (dangersOf(session).length) met++;
        before = session;
      }
    }),
    { seed: 77, numRuns: 1500 },
  );
  // The walks did come to hazardous turns, else they would prove nothing.
  expect(met).toBeGreaterThan(1000);
});

test("no walk ends with a cause unless its proof is in the log, and none goes on past a proof", () => {
  const ended = new Map<string, number>();
  fc.assert(
    fc.property(numbers, (throws) => {
      let check: string | null = null;
      for (const { session } of walk(throws, true, 120)) {
        const meta = metaOf(session);
        const { cause } = memoryOf(session);
        const facts = () => factsOf(session.log, flow);
        if (meta.outcome === "part" || meta.kind === "model" || (meta.outcome === "professional" && cause)) {
          const proof = flow.causes[cause ?? ""]?.proof;
          const named = cause && (proof ? isTrue(proof, facts(), flow) : facts().found.has(cause));
          if (!named) throw new Error(`"${cause}" was not proved`);
          ended.set(cause, (ended.get(cause) ?? 0) + 1);
        } else if (meta.check && meta.check !== check) {
          const now = facts();
          const missed = flow.scenarios["no-ice-plumbed"]?.proofs.filter((id) =>
            isTrue(flow.causes[id]?.proof ?? { all: [] }, now, flow),
          );
          if (missed?.length) throw new Error(`${meta.turn} is asked although ${missed} is proved`);
        }
        check = meta.check;
      }
    }),
    { seed: 78, numRuns: 1500 },
  );
  expect(ended.size).toBeGreaterThan(8);
});

test("a person who only answers comes to an ending within 60 answers, never stuck, never asked twice", () => {
  fc.assert(
    fc.property(numbers, (throws) => {
      const asked = new Map<string, number>();
      let before = startSession(flow, at(0), null, chart);
      let session = before;
      const steps = walk(throws, false, 1000);
      for (let next = steps.next(); ; next = steps.next()) {
        session = next.done ? next.value : next.value.session;
        if (next.done) break;
        if (next.value.refused) continue;
        const { turn } = metaOf(before);
        asked.set(turn, (asked.get(turn) ?? 0) + 1);
        before = session;
      }
      const twice = [...asked].filter(([turn, times]) => times > 1 && !turn.startsWith("wait-for-ice."));
      expect(twice).toEqual([]);
      expect(isOver(session)).toBe(true);
      expect(session.log.events.length).toBeLessThanOrEqual(60);
    }),
    { seed: 79, numRuns: 1500 },
  );
});

test("the live session is the replayed log, after every event", () => {
  fc.assert(
    fc.property(numbers, (throws) => {
      for (const { session } of walk(throws, true, 60)) {
        const { session: replayed, dropped } = replay(flow, copyOf(session.log), chart);
        expect(dropped).toBe(0);
        if (standOf(replayed) !== standOf(session)) expect(replayed).toEqual(session);
      }
    }),
    { seed: 80, numRuns: 100 },
  );
});

test("a replay passes through the very states that the live session passed through", () => {
  fc.assert(
    fc.property(numbers, (throws) => {
      const lived: string[] = [];
      let last: Session | null = null;
      for (const { session } of walk(throws, false, 60)) {
        if (session.log.events.length > lived.length) lived.push(standOf(session));
        last = session;
      }
      if (!last) return;
      let again = startSession(flow, last.log.started, last.log.model, chart);
      for (const [place, event] of copyOf(last.log).events.entries()) {
        again = record(again, event).session;
        if (standOf(again) !== lived[place]) expect(standOf(again)).toBe(lived[place]);
      }
    }),
    { seed: 81, numRuns: 500 },
  );
});
