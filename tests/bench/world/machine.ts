import { type Chance, chanceOf, pick } from "./chance.ts";

/** What a household owns; it does not change. Shares are judgement, of homes that come to a spares shop in both countries. */
export type Machine = {
  water: "plumbed" | "tank";
  /** A compartment of its own in the fridge's door is common in French-door machines. */
  iceAt: "freezer" | "door";
  iceDispenser: boolean;
  waterDispenser: boolean;
  filter: "inside" | "inline" | "none";
  /** Reads a tag on the cartridge and refuses a strange one. */
  filterReader: boolean;
  bypassPlug: boolean;
  shutOff: "arm" | "sensor";
  testButton: boolean;
  doorSwitchSeen: boolean;
  display: boolean;
  /** Its display shows what is set, whatever it is inside. */
  displayShowsSetting: boolean;
  lock: boolean;
  frontGrille: boolean;
  drainSeen: boolean;
  /** Millilitres that fill the tray. */
  trayMl: number;
  pieces: number;
  /** Grams of ice that a sound one makes in a day. */
  dayGrams: number;
  /** The small tap can be reached and turned by hand without moving the machine. */
  tapInReach: boolean;
  /** Where the valve sits, a panel at the back covers it. */
  country: "GB" | "US";
};

export function drawMachine(seed: string): Machine {
  const chance = chanceOf(`${seed} machine`);
  const is = (share: number) => chance() < share;
  const country = is(0.5) ? "GB" : "US";
  // Judgement: tanks are common in Britain, rare in America.
  const water = is(country === "GB" ? 0.2 : 0.03) ? "tank" : "plumbed";
  const iceDispenser = is(water === "tank" ? 0.3 : 0.72);
  const waterDispenser = water === "plumbed" ? is(iceDispenser ? 0.97 : 0.25) : is(0.3);
  const twist = water === "tank" || is(0.35);
  return {
    water,
    iceAt: water === "plumbed" && is(country === "US" ? 0.28 : 0.1) ? "door" : "freezer",
    iceDispenser,
    waterDispenser,
    filter: water === "tank" ? "none" : pick(chance, filters),
    filterReader: is(0.2),
    bypassPlug: is(0.25),
    shutOff: is(twist ? 0.7 : 0.45) ? "sensor" : "arm",
    testButton: is(0.75),
    doorSwitchSeen: is(0.6),
    display: is(0.7),
    displayShowsSetting: is(0.5),
    lock: iceDispenser && is(0.85),
    frontGrille: is(0.45),
    drainSeen: is(0.6),
    ...tray(chance, twist),
    tapInReach: is(0.72),
    country,
  };
}

const filters = [
  ["inside", 70],
  ["inline", 20],
  ["none", 10],
] as const;

/** A mould of 140 ml and 8 crescents makes 2 kg a day (LBNL, Meier 1995); twist trays less (no source found). */
function tray(chance: Chance, twist: boolean): Pick<Machine, "trayMl" | "pieces" | "dayGrams"> {
  if (twist) return { trayMl: 110, pieces: 10, dayGrams: 600 + 700 * chance() };
  return { trayMl: 140, pieces: 8, dayGrams: 1400 + 800 * chance() };
}
