import type { Prepared } from "./prepare.ts";

/** What a step must find, by this world's own judgement of what the step has people do. */
type State = "tap-shut" | "plug-out" | "maker-still" | "drive-locked";

/**
 * Steps by what they have hands do. Supply parts are opened with the tap closed; nobody reaches behind with the plug
 * in; hands go to the tray with the plug out or after 15 minutes of stillness (a harvest under way goes on); a lever or a chute is wiped with the lock on or
 * the bin out.
 */
const steps: [RegExp, State[]][] = [
  [/^filter-seated\.(look|reseat|turn-round)$/, ["tap-shut"]],
  [/^filter-cap\.(look|remove)$/, ["tap-shut"]],
  [/^flow-without-filter\.prepare$/, ["tap-shut"]],
  [/^tap-joint\.tighten$/, ["tap-shut"]],
  [/^supply-line\./, ["plug-out"]],
  [/^supply-line\.straighten$/, ["tap-shut", "plug-out"]],
  [/^inlet-valve\.(screen|rinse)$/, ["tap-shut", "plug-out"]],
  [/^inlet-valve\.arrives$/, ["plug-out"]],
  [/^fill-tube(-again)?\.(look|thaw|look-again)$/, ["plug-out"]],
  [/^ice-under-maker\.remove$/, ["maker-still"]],
  [/^transport-parts\.remove$/, ["maker-still"]],
  [/^ice-bin\.wipe-sensor$/, ["maker-still"]],
  [/^(lever\.clean|chute-flap\.clear-ice)$/, ["drive-locked"]],
];

/** What a step lacks. @param stillFor minutes for which its own words have people wait first */
export function hazardAt(turn: string, prepared: Prepared, now: number, stillFor: number): State[] {
  const needs = steps.flatMap(([pattern, states]) => (pattern.test(turn) ? states : []));
  const still = prepared.iceOffSince !== null && now + stillFor - prepared.iceOffSince >= 15;
  const has: Record<State, boolean> = {
    "tap-shut": prepared.tapShut,
    "plug-out": prepared.plugOut,
    "maker-still": prepared.plugOut || still,
    // A lever pressed by hand runs the drive.
    "drive-locked": prepared.plugOut || prepared.locked || prepared.binOut,
  };
  return [...new Set(needs.filter((state) => !has[state]))];
}

/** Steps that take people behind the machine, where water near the plug shows too late if nobody asked. */
export const leadsBehind = (turn: string) => /^(supply-line|inlet-valve)\./.test(turn);
