import { type Belief, type Choice, chooseNext, type State } from "../../../src/diagnosis/index.ts";
import { learntFrom } from "../../../src/flow/advice/learnt-from.ts";
import type { Policy } from "./list-policies.ts";
import { buyPart, doCheck, end, movesNow, provedNow, type Visit, waitForIce } from "./visit.ts";

/**
 * Ours: what the diagnosis advises among what the scenario allows. With `again`, whatever can be looked at without a
 * gate may be asked once more before a professional is called, where that is worth it.
 */
export function bestNext(again: boolean): Policy {
  const decided = new Map<string, Choice>();
  const decide = (visit: Visit, belief: Belief, allowed: readonly string[], state: State): Choice => {
    const { scene } = visit.home;
    // Many homes come to the same place; lists keep their order because it breaks ties.
    const key = JSON.stringify([scene.id, pairs(belief.shown), pairs(belief.failed), allowed, state]);
    const choice = decided.get(key) ?? chooseNext(scene.model, belief, allowed, state, scene.stakes);
    decided.set(key, choice);
    return choice;
  };
  return (visit) => {
    const { scene } = visit.home;
    const repeated = new Set<string>();
    for (let turns = 0; turns < 100; turns++) {
      const moves = movesNow(visit);
      const proved = provedNow(visit);
      // A rule of the trade that ends the search whatever the causes, such as a tap that cannot be shut.
      if (proved.some(({ cause, rival }) => !rival && scene.flow.causes[cause]?.remedy === "professional"))
        return end(visit, { how: "professional", cause: null, due: false });
      const { belief, fixed } = learntFrom(scene.flow, scene.model, visit.memory, scene.stakes.success);
      const state: State = {
        done: [...visit.memory.done].sort(),
        proven: proved.flatMap(({ rival, due }) => (rival && !due ? [rival] : [])),
        due: proved.flatMap(({ rival, due }) => (rival && due ? [rival] : [])),
        fixed,
        mayWait: moves.includes(null),
      };
      const allowed = moves.filter((move) => move !== null);
      let choice = decide(visit, belief, allowed, state);
      if (again && "stop" in choice && choice.stop === "professional") {
        choice = decide(visit, belief, [...allowed, ...secondLooks(visit, repeated)], state);
        if ("next" in choice && !allowed.includes(choice.next)) repeated.add(choice.next);
      }
      if ("next" in choice) doCheck(visit, choice.next);
      else if ("wait" in choice) waitForIce(visit);
      else finish(visit, choice);
      if (visit.ending) return;
    }
    throw new Error(`A search without end in ${scene.id}`);
  };
}

function finish(visit: Visit, choice: Extract<Choice, { stop: string }>): void {
  const { stop, cause, due } =
    choice.stop === "part" ? choice : { stop: choice.stop, cause: null, due: false };
  if (cause) buyPart(visit, cause, due);
  end(visit, { how: stop, cause, due });
}

/** What may be looked at once more: no gate is passed twice for that. */
function secondLooks({ home, memory }: Visit, repeated: ReadonlySet<string>): string[] {
  return memory.done.filter((check) => !repeated.has(check) && !home.scene.flow.checks[check]?.gates?.length);
}

/** Independent of the order in which things were learnt, as the belief itself is. */
function pairs(record: Readonly<Record<string, string | number>>): string[] {
  return Object.entries(record)
    .map((pair) => pair.join("="))
    .sort();
}
