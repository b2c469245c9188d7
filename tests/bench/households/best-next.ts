import { movesAt, provedAt } from "../../../src/advice/index.ts";
import { learntFrom } from "../../../src/advice/learnt-from.ts";
import type { Advice } from "../../../src/chart/index.ts";
import { isWaitForIce } from "../../../src/compile/wait-for-ice.ts";
import type { Flow } from "../../../src/guide/index.ts";
import type { Policy } from "./list-policies.ts";
import { buyPart, doCheck, end, provedNow, type Visit, waitForIce } from "./visit.ts";

/** Ours: what the product's own adviser says, until it has nothing more to say and a professional is called. */
export function bestNext(flow: Flow): Policy {
  const known = new Map<string, Advice>();
  const advise = ({ home: { scene }, memory }: Visit): Advice => {
    // Many homes come to the same place, on ways that differ; which way is of no matter to advice.
    const { belief, fixed } = learntFrom(scene.subject.diagnosis, scene.model, memory);
    const learnt = [pairs(belief.shown), belief.counted, pairs(belief.failed), [...fixed].sort()];
    const key = JSON.stringify([
      scene.id,
      learnt,
      [...memory.done].sort(),
      movesAt(scene.subject, memory),
      provedAt(scene.subject, memory),
    ]);
    const advice = known.get(key) ?? scene.adviser.advise(memory);
    known.set(key, advice);
    return advice;
  };
  return (visit) => {
    const { scene } = visit.home;
    for (let turns = 0; turns < 100; turns++) {
      // The end of what a householder can do, whatever the cause, such as a tap that cannot be shut.
      const halts = provedNow(visit).some(
        ({ cause }) => !(cause in flow.machine.causes) && flow.causes[cause]?.remedy === "professional",
      );
      const { check, part } = halts ? { check: null, part: null } : advise(visit);
      if (part) sell(visit, part);
      else if (!check) end(visit, { how: "professional", cause: null, due: false });
      else if (isWaitForIce(flow.checks[check])) waitForIce(visit, check);
      else doCheck(visit, check);
      if (visit.ending) return;
    }
    throw new Error(`A search without end in ${scene.id}`);
  };
}

function sell(visit: Visit, cause: string): void {
  const due = visit.home.scene.flow.causes[cause]?.claim === "due";
  buyPart(visit, cause, due);
  end(visit, { how: "part", cause, due });
}

/** Independent of the order in which things were learnt, as the belief itself is. */
function pairs(record: Readonly<Record<string, string | number>>): string[] {
  return Object.entries(record)
    .map((pair) => pair.join("="))
    .sort();
}
