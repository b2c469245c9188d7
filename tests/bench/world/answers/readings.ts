import type { Reading } from "../../../../src/instruments/index.ts";
import { between, normal } from "../chance.ts";
import { gramsPerDay, pieceGrams } from "../making.ts";
import type { Scene } from "../scene.ts";
import { dispenserFlow, kitchenTapFlow } from "../water.ts";

type Asked = { turn: string; instrument: string; place: "freezer" | "fridge"; at: string };
type Measured = Reading | "not-sure" | "cannot";

/** What these people read off, with the errors that each way of measuring has. */
export function measure(scene: Scene, asked: Asked): Measured {
  if (!scene.perfect && scene.chance() < 0.06 * scene.person.doubts) return "not-sure";
  return ways[asked.instrument]?.(scene, asked) ?? "not-sure";
}

const ways: Record<string, (scene: Scene, asked: Asked) => Measured> = {
  flow: readFlow,
  temperature: readTemperature,
  "filter-age": readFilterAge,
  supply: readTap,
  ice: readIce,
  cubes: readCubes,
  seal: readSeal,
};

/** A jug: ±5 ml read, ±5 % its own, both alike anywhere within (W4); a stopwatch 0.10 s (Am. J. Phys. 87, 110). */
function readFlow(scene: Scene, { turn }: Asked): Measured {
  const { state, machine, person, chance, perfect } = scene;
  if (!machine.waterDispenser) return "cannot";
  const flow = dispenserFlow(state, machine, /without|bypass/.test(turn) ? "without" : "with");
  const runs = perfect || chance() < 0.3 ? 2 : 1;
  return {
    kind: "flow",
    runs: Array.from({ length: runs }, () => {
      const seconds = 10 + normal(chance, 0, 0.1);
      const slip = !perfect && chance() < 0.02 * person.slips ? between(chance, 0.6, 1.4) : 1;
      const caught = flow * seconds * slip;
      const volume = person.scales
        ? Math.round(caught)
        : Math.round((caught * (1 + person.jug) + between(chance, -5, 5)) / 10) * 10;
      return {
        volume: Math.max(0, volume),
        unit: person.scales ? ("g" as const) : ("ml" as const),
        seconds: 10,
      };
    }),
  };
}

/** A thermometer ±1 °C; displays show what is set in half of the machines, and else ±1 °C. */
function readTemperature(scene: Scene, { turn, place }: Asked): Measured {
  const { state, machine, person, chance } = scene;
  const atIce = /ice-place|ice-box|where-ice/.test(turn);
  const real = atIce ? state.boxC : place === "fridge" ? state.fridgeC : state.freezerC;
  if (person.thermometer)
    return {
      kind: "temperature",
      value: round(real + between(chance, -1, 1)),
      unit: "C",
      with: "thermometer",
      place,
    };
  if (atIce || !machine.display || state.power === "off") return "cannot";
  const set = place === "fridge" ? state.setFridge : state.setFreezer;
  const shown = machine.displayShowsSetting ? set : Math.round(real + between(chance, -1, 1));
  return { kind: "temperature", value: shown, unit: "C", with: "display", place };
}

/** Months from memory: some fifth too long or too short; one in four doesn't know. */
function readFilterAge(scene: Scene, { at }: Asked): Measured {
  const { state, machine, person, home, perfect } = scene;
  if (machine.filter === "none") return "cannot";
  if (!person.knowsFilterAge && !perfect) return "not-sure";
  const months = home.changed === "new-filter" ? 0 : state.filterMonths * (perfect ? 1 : 1 + person.memory);
  const then = new Date(Date.parse(at) - Math.max(0, months) * 30.4 * 86_400_000);
  return { kind: "filter-age", fitted: { by: "month", month: then.toISOString().slice(0, 7) } };
}

/** A bucket of about 5 l at the kitchen tap. */
function readTap(scene: Scene): Measured {
  const { state, chance, perfect } = scene;
  const trait = scene.trait("kitchen tap");
  // What a tap itself lets through: 5–8 l/min common.
  const flow = Math.min(kitchenTapFlow(state), between(trait, 83, 140));
  if (flow < 2) return "not-sure";
  const size = 5 * (perfect ? 1 : 1 + between(trait, -0.06, 0.06));
  const seconds = Math.max(3, Math.round((size * 1000) / flow + normal(chance, 0, 0.5)));
  return { kind: "supply", by: "fill", volume: 5, unit: "l", seconds };
}

function readIce(scene: Scene): Measured {
  const { state, machine, chance, perfect, person } = scene;
  const error = perfect ? 1 : 1 + normal(chance, 0, 0.15);
  const made = gramsPerDay(state, machine, state) * error;
  const wanted = state.demandHigh ? "much" : scene.trait("wanted")() < 0.7 ? "some" : "little";
  if (person.scales)
    return { kind: "ice", by: "weight", amount: Math.round(made), unit: "g", hours: 24, wanted };
  const piece = Math.max(4, pieceGrams(state, machine));
  return { kind: "ice", by: "pieces", amount: Math.round(made / piece), hours: 24, wanted };
}

function readCubes(scene: Scene): Measured {
  const { state, machine, person, chance } = scene;
  if (!person.scales) return "cannot";
  if (gramsPerDay(state, machine, state) < 0.08 * machine.dayGrams) return "cannot";
  return {
    kind: "cubes",
    pieces: 10,
    mass: Math.max(1, Math.round(pieceGrams(state, machine) * 10 * (1 + normal(chance, 0, 0.05)))),
    unit: "g",
  };
}

/** Twelve spots; a strip is misread at one in 25. */
function readSeal(scene: Scene): Measured {
  const { state, chance, perfect, person } = scene;
  const start = Math.floor(scene.trait("seal spot")() * 12);
  const slips = state.seal === "worn" ? 5 : state.seal === "dirty" ? 3 : 0;
  const bad = new Set(Array.from({ length: slips }, (_, place) => (start + place * 2) % 12));
  if (state.sealGap === "crooked") for (const spot of [0, 1, 11]) bad.add(spot);
  if (state.sealGap === "blocked") for (const spot of [4, 5]) bad.add(spot);
  const spots = Array.from({ length: 12 }, (_, spot) => {
    const wrong = !perfect && chance() < 0.04 * person.slips;
    return bad.has(spot) !== wrong ? ("slips" as const) : ("grips" as const);
  });
  return { kind: "seal", door: "one", spots };
}

const round = (value: number) => Math.round(value * 10) / 10;
