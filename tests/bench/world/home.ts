import { between, type Chance, chanceOf, normal, pick } from "./chance.ts";
import { settledCold } from "./cold.ts";
import { type Complaint, complainOf } from "./complaint.ts";
import { type Changed, type Fault, faults } from "./faults/index.ts";
import { drawMachine, type Machine } from "./machine.ts";
import { gramsPerDay } from "./making.ts";
import { type State, soundState } from "./state.ts";
import { type Trouble, troublesOf } from "./troubles.ts";

/** The people: what they can do, and how far what they say can be trusted. It stays theirs all through. */
export type Person = {
  movesMachine: boolean;
  takesPanelOff: boolean;
  waits: boolean;
  reachesPlug: boolean;
  thermometer: boolean;
  scales: boolean;
  knowsFilterAge: boolean;
  /** Times as often as most people that they misread, and are not sure. */
  slips: number;
  doubts: number;
  /** The jug's own error, and that of months remembered: shares. */
  jug: number;
  memory: number;
};

export type Hazard = "burning" | "sparks" | "water-near-socket" | "gas" | "shock";

export type Home = {
  seed: string;
  machine: Machine;
  state: State;
  faults: Fault[];
  changed: Changed;
  hazard: Hazard | null;
  /** Water stands near the plug behind the machine, where only who reaches for it can see it. */
  wetPlug: boolean;
  person: Person;
  complaint: Complaint;
};

/** What came before the trouble, among those who ask for help (judgement: most know of nothing). */
const changes: readonly (readonly [Changed, number])[] = [
  ["nothing", 70],
  ["new-filter", 7],
  ["new", 5],
  ["moved", 6],
  ["power-cut", 5],
  ["holiday", 7],
];

/** One home in so many has a second fault that has nothing to do with the first (judgement: old machines). */
const secondFault = 0.1;

/** How homes differ from those of this world: how common a fault is, per thousand homes; times as often as here people err. */
export type Apart = { shareOf(fault: Fault): number; slips: number };

const asHere: Apart = { shareOf: ({ share }) => share, slips: 1 };

/**
 * A home by its seed alone. Its faults are drawn until somebody could notice something.
 * @param perfect its people err at nothing; what they can do stays as it is
 */
export function drawHome(seed: string, perfect = false, apart = asHere): Home {
  for (let attempt = 0; ; attempt++) {
    const own = `${seed}.${attempt}`;
    const machine = drawMachine(own);
    const chance = chanceOf(`${own} faults`);
    const changed = pick(chance, changes);
    const first = drawFault(chance, machine, changed, null, apart);
    const second = chance() < secondFault ? drawFault(chance, machine, changed, first, apart) : null;
    const state = soundState(machine);
    const broken = second ? [first, second] : [first];
    for (const fault of broken) fault.break(state, chance, machine);
    settle(state, machine, chance);
    const troubles = noticed(state, machine);
    if (!troubles.length) continue;
    const complaint = complainOf(troubles, machine, changed, chance, perfect);
    const hazard = drawHazard(chance, complaint);
    const wetPlug = leaksBehind(state) && chance() < 0.06;
    return {
      seed,
      machine,
      state,
      faults: broken,
      changed,
      hazard,
      wetPlug,
      person: drawPerson(own, apart.slips),
      complaint,
    };
  }
}

function drawFault(
  chance: Chance,
  machine: Machine,
  changed: Changed,
  but: Fault | null,
  { shareOf }: Apart,
): Fault {
  return pick(
    chance,
    faults.flatMap((fault) => {
      if (fault === but || fault.on?.(machine) === false) return [];
      return [[fault, shareOf(fault) * (fault.after?.[changed] ?? 1)] as const];
    }),
  );
}

/** The trouble is some days old: temperatures have settled, unless it was only just started. */
function settle(state: State, machine: Machine, chance: Chance): void {
  if (state.hoursSinceChange >= 24) Object.assign(state, settledCold(state, machine));
  if (gramsPerDay(state, machine, settledCold(state, machine)) < 0.08 * machine.dayGrams && !state.binFull)
    state.binGrams = chance() < 0.6 ? 0 : 250 * chance();
  if (state.lump) state.binGrams = Math.max(800, state.binGrams);
}

function noticed(state: State, machine: Machine): Trouble[] {
  const found = troublesOf(state, machine);
  if (state.hoursSinceChange >= 24) return found;
  return [...found, "no-ice", ...(state.fridgeC > 9 ? (["warm-fridge"] as const) : [])];
}

/** Dangers at the start: rare; water on the floor is near a plug in one leak out of twelve (judgement). */
function drawHazard(chance: Chance, { trouble }: Complaint): Hazard | null {
  if (trouble === "leak" && chance() < 0.08) return "water-near-socket";
  const draw = chance();
  if (draw < 0.003) return "burning";
  if (draw < 0.005) return "sparks";
  if (draw < 0.006) return "gas";
  return draw < 0.007 ? "shock" : null;
}

const leaksBehind = ({ leaks }: State) =>
  leaks.some((leak) => leak === "line" || leak === "valve-body" || leak === "drip-pan");

function drawPerson(own: string, slips: number): Person {
  const chance = chanceOf(`${own} person`);
  return {
    movesMachine: chance() < 0.5,
    takesPanelOff: chance() < 1 / 3,
    waits: chance() < 0.9,
    reachesPlug: chance() < 0.6,
    thermometer: chance() < 0.5,
    scales: chance() < 0.4,
    knowsFilterAge: chance() < 0.75,
    slips: slips * Math.exp(normal(chance, -0.08, 0.4)),
    doubts: Math.exp(normal(chance, -0.18, 0.6)),
    jug: between(chance, -0.05, 0.05),
    memory: normal(chance, 0, 0.22),
  };
}
