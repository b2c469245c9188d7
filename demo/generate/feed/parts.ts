import { type KindOfPart, kinds, plumbed, tankFed } from "../catalogue.ts";
import { type Chance, createChance } from "./chance.ts";
import type { Family } from "./codes.ts";
import type { Cells } from "./columns.ts";

/** A part of a family; `when` says which of two it is where the maker changed it in the middle of a model's life. */
export type FamilyPart = { cells: Cells; when?: { by: "serial" | "variant"; half: "older" | "newer" } };

const machines = ["french-door", "side-by-side", "bottom-freezer", "top-freezer", "french-door", "tank-fed"];

// Eight kinds each: all machines have an ice maker, a seal and a bin, but water comes from a pipe or from a tank.
const left = { plumbed: [...tankFed, "dispenser-flap", "door-switch"], tank: [...plumbed] };
const kindsOf = {
  plumbed: kinds.filter(({ kind }) => !left.plumbed.includes(kind)),
  tank: kinds.filter(({ kind }) => !left.tank.includes(kind)),
};

// Of the kinds of a family. Two rows for each changed one make 3 % of the fitments; chains of one to three older
// parts make 2 % of the parts.
const shares = { compatible: 0.05, changed: 0.0163, superseded: 0.014, outOfStock: 0.08, few: 0.12 };

/** How many places for parts a kind of a family has: the part, a compatible or newer one, three older ones. */
const placesPerKind = 8;

/** What a family is and takes. @param minutes the time for fitting a part, by kind */
export function partsOf(seed: number, family: Family, minutes: Record<string, number>) {
  const chance = createChance(~seed, family.place);
  const machine = machines[Math.floor(chance() * machines.length)] ?? "";
  const own = kindsOf[machine === "tank-fed" ? "tank" : "plumbed"];
  const fitting = `${family.maker.name} ${String.fromCharCode(65 + (family.place % 26))}${family.placeInMaker + 1} series`;

  const parts = own.flatMap((kind, at): FamilyPart[] => {
    const first = (family.place * kinds.length + at) * placesPerKind;
    const make = (place: number, of: Cells = {}): Cells => ({
      ...partCells(kind, fitting, numberOf(family, first + place), of["origin"] === "compatible", chance),
      minutes: `${minutes[kind.kind] ?? ""}`,
      ...of,
    });
    const made: FamilyPart[] = [];
    const fate = chance();
    if (fate < shares.changed) {
      const by = chance() < 0.5 ? "serial" : "variant";
      made.push(
        { cells: make(0), when: { by, half: "older" } },
        { cells: make(1), when: { by, half: "newer" } },
      );
    } else if (fate < shares.changed + shares.superseded) {
      const older = chance() < 0.6 ? 1 : chance() < 0.6 ? 2 : 3;
      for (let place = 0; place <= older; place++) {
        const chain: Cells = {};
        if (place > 0) chain["replaces"] = numberOf(family, first + place - 1);
        if (place < older) chain["replaced-by"] = numberOf(family, first + place + 1);
        made.push({ cells: make(place, chain) });
      }
    } else made.push({ cells: make(0) });
    if (chance() < shares.compatible) made.push({ cells: make(placesPerKind - 1, { origin: "compatible" }) });
    return made;
  });
  return { machine, parts };
}

/** Eight digits that are not in any order, as part numbers are; distinct for the first hundred million places. */
function numberOf({ maker }: Family, place: number): string {
  // Shares no divisor with the modulus, and the product stays below 2 ** 53.
  const digits = (place * 38_712_347 + 51_904_117) % 100_000_000;
  return `${maker.letters.slice(0, 2)}${String(digits).padStart(8, "0")}`;
}

function partCells(
  kind: KindOfPart,
  fitting: string,
  number: string,
  isCopy: boolean,
  chance: Chance,
): Cells {
  const stock = chance();
  // Within 15% of the usual price, ending in 9.
  const pence = Math.round(((isCopy ? 0.7 : 1) * kind.pence * (0.85 + 0.3 * chance())) / 10) * 10 - 1;
  // The sizes of tubes are told in inches here and there.
  const noun = kind.kind === "fill-tube" && chance() < 0.2 ? `${kind.noun}, 1/4"` : kind.noun;
  return {
    kind: kind.kind,
    number,
    name: `${noun} for ${fitting}${isCopy ? " (compatible)" : ""}`,
    price: (pence / 100).toFixed(2),
    currency: "GBP",
    stock:
      stock < shares.outOfStock
        ? "out-of-stock"
        : stock < shares.outOfStock + shares.few
          ? "few"
          : "in-stock",
    link: `https://larder-lane.example/parts/${number.toLowerCase()}`,
    ...(chance() < 0.6
      ? { picture: `https://larder-lane.example/pictures/${number.toLowerCase()}.webp` }
      : {}),
    origin: "original",
  };
}
