import { expect, test } from "vitest";
import { ownFlow } from "../own-flow.ts";
import { inTradeOrder } from "../session/drive.ts";
import { counts } from "../soak/counts.ts";
import { Pair } from "./two-tabs.ts";

const guide = inTradeOrder(ownFlow);

const steps = 25;

/** The generator of Park and Miller (Communications of the ACM 31, 1988, 1192-1201). */
function diceFrom(seed: number) {
  let state = seed;
  return (sides: number) => {
    state = (state * 48_271) % 2_147_483_647;
    return Math.floor((state / 2_147_483_647) * sides);
  };
}

test("two tabs that act, reload and lose their storage lose no stop, and no answer that was shown as taken", () => {
  for (let seed = 1; seed <= counts.tabs; seed++) {
    const pair = new Pair(guide, diceFrom(seed * 7919));
    for (let step = 0; step < steps; step++) pair.step();
    pair.end();
    expect(pair.faults, `pair ${seed}`).toEqual([]);
  }
}, 3_600_000);
