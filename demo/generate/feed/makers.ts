import { type Chance, createChance, pick } from "./chance.ts";

/** A maker of our own invention: its name, the letters that its codes begin with, and how many families it builds. */
export type Maker = { name: string; letters: string; families: number; place: number };

// Put together from three pieces, so that no piece can be a name by itself.
const heads =
  "Wex Tarn Brindl Ull Ostr Pellw Quorn Haskl Vrel Dornsh Fyth Glimm Jask Lormb Morvn Neskl Prydd Ruskv".split(
    " ",
  );
const middles = ["a", "e", "i", "o", "u", "er", "ol", "an", "im", "ur", "esk", "ath"];
const tails =
  "marrow hoxby quay mere thorpe combe lund dray fenn garth holt knell sedge vane worth wick".split(" ");

/**
 * Makers as many as are asked for, one after the other: a few are big and many small, as in the trade (common
 * practice, no source).
 * @param families how many families there are in all; no maker builds more than a sixth of them
 */
export function* inventMakers(seed: number, families: number): Generator<Maker, never> {
  const chance = createChance(seed, -1);
  const names = new Set<string>();
  const taken = new Set<string>();
  for (let place = 0; ; place++) {
    let name = "";
    let letters = "";
    for (let tries = 0; tries < 50 && (!letters || taken.has(letters)); tries++) {
      name = nameOf(chance, names);
      letters = lettersOf(name, chance);
    }
    names.add(name);
    taken.add(letters);
    // From 20 to 2000 families, evenly spread on a logarithmic scale.
    const wanted = Math.floor(20 * 100 ** chance());
    yield { name, letters, families: Math.max(1, Math.min(wanted, Math.floor(families / 6))), place };
  }
}

function nameOf(chance: Chance, names: ReadonlySet<string>): string {
  let name = "";
  // With thousands of makers the short names run out; another piece makes new ones.
  for (let middle = ""; !name || names.has(name); ) {
    middle = (middle.length > 6 ? "" : middle) + pick<string>(middles, chance);
    name = pick<string>(heads, chance) + middle + pick<string>(tails, chance);
  }
  return name;
}

/** Two or three consonants of the name in their order, the first always. */
function lettersOf(name: string, chance: Chance): string {
  const [first = "", ...others] = name.toUpperCase();
  const consonants = others.filter((letter) => !"AEIOU".includes(letter));
  const second = Math.floor(chance() * (consonants.length - 1));
  const third = second + 1 + Math.floor(chance() * (consonants.length - 1 - second));
  return first + consonants[second] + (chance() < 0.2 ? "" : consonants[third]);
}
