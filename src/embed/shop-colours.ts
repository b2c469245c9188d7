import { contrastOf, hexOf, type Rgb } from "./contrast.ts";

/** The colours that a shop may set, each with those of the panel's own that it takes the place of. */
const shopColours = {
  "--fridgeside-ground": ["surface"],
  "--fridgeside-card": ["raised"],
  "--fridgeside-tint": ["ice"],
  "--fridgeside-text": ["ink"],
  "--fridgeside-quiet-text": ["soft"],
  "--fridgeside-accent": ["accent"],
  "--fridgeside-on-accent": ["on-accent"],
  "--fridgeside-edge": ["wall", "edge"],
} as const;

export type ShopColour = keyof typeof shopColours;

export const shopColourNames = Object.keys(shopColours) as ShopColour[];

/** A colour of the panel's own, as in `--fs-ink`. */
export type Tone = (typeof shopColours)[ShopColour][number] | "wrong" | "copper";

/** What follows from the others: an earlier answer and its words, and the thin lines between one thing and the next. */
export type Colours = Partial<Record<Tone | "said" | "on-said" | "line", Rgb>>;

/** At least so much for words, and so much for what shows where a control is (WCAG 2.2, 1.4.3 and 1.4.11). */
const [WORDS, EDGES] = [4.5, 3];

/** What is drawn on what. The last two are no shop's to set, so a ground has to suit them. */
const drawnOn: [front: Tone, behind: Tone[], least: number][] = [
  ["ink", ["surface", "raised", "ice"], WORDS],
  ["soft", ["surface", "raised", "ice"], WORDS],
  ["accent", ["surface", "raised", "ice"], WORDS],
  ["on-accent", ["accent"], WORDS],
  ["wall", ["surface", "raised", "ice"], EDGES],
  ["edge", ["surface", "raised", "ice"], EDGES],
  ["wrong", ["surface", "raised", "ice"], WORDS],
  ["copper", ["surface", "raised", "ice"], WORDS],
];

/** All pairs that are checked, the front first. */
export const pairs = drawnOn.flatMap(([front, behind, least]) =>
  behind.map((ground) => ({ front, ground, least })),
);

/** All tones that a pair needs. */
export const tones = [...new Set(pairs.flatMap(({ front, ground }) => [front, ground]))];

/**
 * Puts a shop's colours in place of the panel's own, where they can be read. Where a pair has too little contrast, the
 * panel keeps its own colour for both of it; then what stood beside them is looked at again.
 * @param own the panel's own colours, every pair of which has enough contrast
 * @returns the tones that change, and what was kept, one sentence a pair
 */
export function chooseColours(
  own: Readonly<Record<Tone, Rgb>>,
  shop: Partial<Record<ShopColour, Rgb>>,
): { colours: Colours; complaints: string[] } {
  const given = { ...shop };
  const complaints: string[] = [];
  for (;;) {
    const colours = coloursOf(given);
    const inUse = { ...own, ...colours };
    const ratioOf = (pair: (typeof pairs)[number]) => contrastOf(inUse[pair.front], inUse[pair.ground]);
    const poor = pairs.find(
      (pair) => (colours[pair.front] ?? colours[pair.ground]) && ratioOf(pair) < pair.least,
    );
    const names = poor && namesOf(poor, colours);
    if (!poor || !names) return { colours: { ...colours, ...followOf(inUse, colours) }, complaints };
    const named = (tone: Tone) => `${nameOf(tone, colours)} (${hexOf(inUse[tone])})`;
    complaints.push(
      `${named(poor.front)} on ${named(poor.ground)} has a contrast of ${floored(ratioOf(poor))}:1, and ` +
        `${poor.least}:1 is the least. The panel keeps its own colour for ${names.join(" and ")}.`,
    );
    for (const name of names) delete given[name];
  }
}

function coloursOf(given: Partial<Record<ShopColour, Rgb>>): Partial<Record<Tone, Rgb>> {
  return Object.fromEntries(
    shopColourNames.flatMap((name) =>
      given[name] ? shopColours[name].map((tone) => [tone, given[name]]) : [],
    ),
  );
}

function followOf(inUse: Readonly<Record<Tone, Rgb>>, changed: Partial<Record<Tone, Rgb>>): Colours {
  const { surface, wall } = inUse;
  const third = (index: 0 | 1 | 2) => surface[index] + (wall[index] - surface[index]) * 0.3;
  return {
    ...((changed.accent || changed["on-accent"]) && { said: inUse.accent, "on-said": inUse["on-accent"] }),
    ...((changed.surface || changed.wall) && { line: [third(0), third(1), third(2)] }),
  };
}

/** The property of a tone. */
const propertyOf = (tone: Tone) =>
  shopColourNames.find((name) => (shopColours[name] as readonly string[]).includes(tone));

/** What of a pair the shop has set. */
function namesOf(
  { front, ground }: { front: Tone; ground: Tone },
  colours: Partial<Record<Tone, Rgb>>,
): ShopColour[] {
  return [front, ground].flatMap((tone) => (colours[tone] && propertyOf(tone)) || []);
}

const nameOf = (tone: Tone, colours: Partial<Record<Tone, Rgb>>) =>
  colours[tone] ? propertyOf(tone) : `our ${propertyOf(tone)?.replace("--fridgeside-", "") ?? tone}`;

/** 4.478 is not 4.5: rounded down, so that no ratio looks better than it is. */
const floored = (ratio: number) => Math.floor(ratio * 100) / 100;
