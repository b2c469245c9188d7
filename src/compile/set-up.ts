import type { CheckInput } from "../diagnosis/index.ts";
import { type Check, type Flow, limitOf, type Preparation, preparations, statesIn } from "../guide/index.ts";
import { needsBack } from "./preparations.ts";

/** What it takes to prepare for a check and to put back, in minutes of attention. */
const limits: Partial<Record<Preparation, string>> = {
  water: "set-up-water",
  plug: "set-up-plug",
  machine: "set-up-machine",
  panel: "set-up-panel",
  lock: "set-up-lock",
  bin: "set-up-bin",
};

/**
 * What the gates of a check have prepared, and what it needs back.
 * @param minutes of the check as the person is told them, preparing included
 */
export function setUpOf(
  flow: Flow,
  check: Check,
  minutes: number,
): Pick<CheckInput, "minutes" | "setUp" | "undoes"> {
  const states = (check.gates ?? []).flatMap((gate) => statesIn(flow.gates[gate]?.leaves));
  const ours = states.flatMap(([one, state]) => (state === preparations[one].ours ? [one] : []));
  const setUp = Object.fromEntries(
    [...new Set(ours)].flatMap((one) => (limits[one] ? [[one, limitOf(flow.limits, limits[one])]] : [])),
  );
  const undoes = needsBack(flow, check);
  const least = limitOf(flow.limits, "set-up-rest");
  const rest = minutes - Object.values(setUp).reduce((sum, one) => sum + one, 0);
  return {
    minutes: Object.keys(setUp).length ? Math.max(rest, least) : minutes,
    ...(Object.keys(setUp).length ? { setUp } : {}),
    ...(undoes.length ? { undoes } : {}),
  };
}
