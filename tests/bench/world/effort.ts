import type { Turn } from "../../../src/turn/index.ts";
import type { Reply } from "./reply.ts";

/*
 * Minutes of attention that a turn takes, by this world's own judgement: reading and answering a minute, fetching and
 * measuring three, moving a machine ten. Hours of waiting are counted apart.
 */
const long: Record<string, number> = {
  "supply-line.look": 6,
  "level-feet.turn": 6,
  "inlet-valve.screen": 15,
  "inlet-valve.rinse": 8,
  "inlet-valve.arrives": 6,
  "fill-tube.look": 5,
  "flush.run": 10,
  "door-seal.clean": 5,
  "bin-wash.look": 3,
  "bin-wash.wash": 5,
  "auger.look": 4,
  "auger.thaw": 4,
  "tank-inside.look": 3,
  "tank-inside.wash": 5,
  "pump-run.listen": 8,
  "too-full.rearrange": 5,
  "ice-use.turn-over": 5,
  "condenser.brush": 6,
  "full-thaw.thaw": 25,
  "reset.unplug": 4,
  "put-back.all": 3,
};
const reading: Record<string, number> = {
  flow: 3,
  temperature: 2,
  "filter-age": 1,
  supply: 3,
  ice: 4,
  cubes: 3,
  seal: 4,
};

export function minutesOf(turn: Turn, reply: Reply): number {
  const quick = "answer" in reply && (reply.answer === "cannot" || reply.answer === "not-sure");
  if (turn.turn.startsWith("opening.") || turn.kind === "model") return 0.4;
  if (quick) return 0.5;
  if (turn.kind === "gate") return gateMinutes(turn);
  if (turn.kind === "wait") return 0.5;
  if (turn.kind === "reading") return reading[turn.reading?.instrument ?? ""] ?? 3;
  return long[turn.turn] ?? 1.2;
}

/** A gate in full is two minutes; the machine is emptied and pulled out for it, or the plug found. */
function gateMinutes({ gate }: Turn): number {
  const items = gate?.items.map(({ id }) => id) ?? [];
  if (items.length <= 1 || (gate && "short" in gate && gate.short)) return 0.3;
  return 2 + (items.includes("two-people") ? 6 : 0);
}
