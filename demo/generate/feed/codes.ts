import { type Chance, createChance, mix, pick } from "./chance.ts";
import type { Maker } from "./makers.ts";

/** A family of models: codes that share a maker, a series and parts. `place` counts families from the first on. */
export type Family = { maker: Maker; placeInMaker: number; place: number; size: number };

// P stands for the maker's letters, # for a digit of the series, @ for a letter and % for a digit of the variant, *
// for either, ~ for a country, colour or issue.
const patterns = [
  "P ####@*@%/~",
  "P-##*##@%@-~",
  "P####N @*%@%",
  "P####@*@%@",
  "P.@*##-##@%@",
  "P##/##@*@%-~",
  "P ####@*@%",
  "P ###@*@",
  "P-@%*@####/%-~",
];
const letters = "ABCDEFGHKLMNPRSTUVWXYZ";
const digits = "0123456789";
const endings = ["EU", "UK", "EK", "AU", "1", "2", "02", "W", "S"];

/** What looks the same on a plate; a twin has the digit where its model has the letter. */
const twins = { B: "8", S: "5", G: "6", Z: "2" };

// Two families of a hundred are twins: the codes of the second look like those of the first.
const isTwin = (place: number) => place % 100 === 11;
const hasTwin = (place: number) => isTwin(place + 1);

/** From 20 to 25 models; twins come in equal numbers. */
export function sizeOf(seed: number, place: number): number {
  return 20 + Math.floor(createChance(seed, isTwin(place) ? place - 1 : place)() * 6);
}

/** A source of codes that gives none twice, separators aside. */
export function createCodes(seed: number, dense: boolean) {
  const given = new Set<number>();
  let previous: string[] = [];

  function isNew(code: string): boolean {
    const digest = digestOf(code);
    return given.has(digest) ? false : Boolean(given.add(digest));
  }

  /** The codes of the next family. Those of a twin are made from the family before it. */
  return function codesOf(family: Family): string[] {
    const chance = createChance(seed, family.place);
    chance();
    const own = dense ? numberedThrough(seed, family) : scattered(seed, family, chance);
    const lead = isTwin(family.place) && !dense ? previous : [];
    const codes = Array.from({ length: family.size }, (_, at) => {
      const twin = lead[at]?.replace(
        /([BSGZ])(?=[^BSGZ]*$)/,
        (letter) => twins[letter as keyof typeof twins],
      );
      let code = twin && isNew(twin) ? twin : "";
      while (!code) {
        const next = own.next().value;
        if (isNew(next)) code = next;
      }
      return code;
    });
    previous = codes;
    return codes;
  };
}

/** Two hashes side by side, 53 bits: two codes that share them by accident only cost another draw. */
function digestOf(code: string): number {
  let [one, other] = [0x811c9dc5, 0x1b873593];
  for (let at = 0; at < code.length; at++) {
    const unit = code.charCodeAt(at);
    // The separators " ", "-", "." and "/" all come before the digits.
    if (unit < 48) continue;
    one = Math.imul(one ^ unit, 0x01000193);
    other = Math.imul(other ^ unit, 0x5bd1e995) ^ (other >>> 15);
  }
  return (mix(one) >>> 0) * 2 ** 21 + (mix(other) >>> 11);
}

/** Codes of which few of the possible ones exist: another series of four digits for each family, drawn variants. */
function* scattered(
  seed: number,
  { maker, placeInMaker, place }: Family,
  chance: Chance,
): Generator<string, never> {
  const pattern = pick<string>(patterns, chance);
  // 3541 shares no divisor with 9000: every family of a maker has digits of its own.
  const series = String(1000 + ((((placeInMaker * 3541 + mix(seed ^ maker.place)) % 9000) + 9000) % 9000));
  const signs = hasTwin(place) ? Object.keys(twins).join("") : letters + digits;
  const [stem = "", ending] = pattern.split("~");
  let last = "";
  for (;;) {
    let used = 0;
    const drawn = stem.replace(/[P#@%*]/g, (sign) => {
      if (sign === "P") return maker.letters;
      if (sign === "#") return series[used++] ?? "";
      return pick<string>(sign === "@" ? letters : sign === "%" ? digits : signs, chance);
    });
    // One model in 25 is the one before it for another country.
    const base = ending !== undefined && last && chance() < 0.04 ? last : drawn;
    last = base === last ? "" : base;
    yield ending === undefined ? base : base + pick<string>(endings, chance);
  }
}

const denseStyles = ["P #-~", "P#N/~", "P-#.~"];

/** Codes that are numbered through: to most there is another one digit away. */
function* numberedThrough(seed: number, { maker, placeInMaker }: Family): Generator<string, never> {
  const chance = createChance(seed, -2 - maker.place);
  const [style, variant] = [pick<string>(denseStyles, chance), pick<string>(letters, chance)];
  const ending = pick<string>(endings, chance);
  // A family has 25 models at most; where it has fewer, numbers are left out as makers do.
  for (let number = 10_000 + placeInMaker * 25; ; number++)
    yield style
      .replace("P", maker.letters)
      .replace("#", number + variant)
      .replace("~", ending);
}
