import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contrastOf, hexOf, type Rgb, rgbOf } from "../../src/embed/contrast.ts";
import {
  chooseColours,
  pairs,
  type ShopColour,
  shopColourNames,
  type Tone,
  tones,
} from "../../src/embed/shop-colours.ts";

const rgb = (written: string) => rgbOf(written) as Rgb;

describe("the contrast of two colours", () => {
  // WCAG 2.2: 21 is the most there is; 'Understanding 1.4.3' says that #777777 on white is 4.47:1 and must not be
  // rounded up to 4.5, and #767676 is the lightest grey that has it.
  test.each([
    ["#000000", "#ffffff", 21],
    ["#ffffff", "#ffffff", 1],
    ["#777777", "#ffffff", 4.478],
    ["#767676", "#ffffff", 4.542],
    ["#ff0000", "#ffffff", 3.998],
    ["#0000ff", "#ffffff", 8.592],
    ["#949494", "#ffffff", 3.033],
  ])("of %s and %s is %d, whichever is in front", (one, other, ratio) => {
    expect(contrastOf(rgb(one), rgb(other))).toBeCloseTo(ratio, 3);
    expect(contrastOf(rgb(other), rgb(one))).toBeCloseTo(ratio, 3);
  });
});

describe("a colour as a browser computes it", () => {
  test.each([
    ["rgb(7, 69, 107)", "#07456b"],
    ["rgba(7, 69, 107, 1)", "#07456b"],
    ["color(srgb 1 0.5 0)", "#ff8000"],
    ["color(srgb -0.02 1.01 2e-7)", "#00ff00"],
    ["#abc", "#aabbcc"],
    ["#07456b", "#07456b"],
  ])("%s is %s", (written, hex) => {
    expect(hexOf(rgb(written))).toBe(hex);
  });

  test.each(["rgba(0, 0, 0, 0.5)", "color(srgb 1 1 1 / 0.2)", "oklch(0.5 0.1 20)", "#07456b80", "", "red"])(
    "%s is left to others",
    (written) => {
      expect(rgbOf(written)).toBeNull();
    },
  );
});

/** The panel's own colours as its rules have them: the first block is light, the last one dark. */
const sheets = ["panel.css", "later-colours.css"].map((name) =>
  readFileSync(new URL(`../../src/panel/frame/${name}`, import.meta.url), "utf8"),
);
const own = Object.fromEntries(
  (["light", "dark"] as const).map((theme) => [
    theme,
    Object.fromEntries(
      tones.map((tone) => {
        const found = sheets.flatMap((sheet) => [
          ...sheet.matchAll(new RegExp(`--fs-${tone}: (#\\w+)`, "g")),
        ]);
        return [tone, rgb((theme === "light" ? found[0] : found.at(-1))?.[1] ?? "")];
      }),
    ) as Record<Tone, Rgb>,
  ]),
) as Record<"light" | "dark", Record<Tone, Rgb>>;

const poorIn = (colours: Record<Tone, Rgb>) =>
  pairs.filter(({ front, ground, least }) => contrastOf(colours[front], colours[ground]) < least);

describe("a shop's colours", () => {
  test.each(["light", "dark"] as const)(
    "take the place of %s ones of our own that can all be read",
    (theme) => {
      expect(poorIn(own[theme])).toEqual([]);
    },
  );

  test("that can be read are taken without a word, and what follows from them with them", () => {
    const shop = { "--fridgeside-accent": rgb("#7a1f3d"), "--fridgeside-ground": rgb("#fff8f0") };
    const { colours, complaints } = chooseColours(own.light, shop);
    expect(complaints).toEqual([]);
    expect(colours).toMatchObject({ accent: rgb("#7a1f3d"), said: rgb("#7a1f3d"), surface: rgb("#fff8f0") });
    expect(colours["on-said"]).toEqual(own.light["on-accent"]);
  });

  test("with too little contrast are left, with both colours and the ratio in one sentence", () => {
    const shop = { "--fridgeside-text": rgb("#777"), "--fridgeside-ground": rgb("#fff") };
    const { colours, complaints } = chooseColours(own.light, shop);
    expect(colours).toEqual({});
    expect(complaints[0]).toBe(
      "--fridgeside-text (#777777) on --fridgeside-ground (#ffffff) has a contrast of 4.47:1, and 4.5:1 is the least. " +
        "The panel keeps its own colour for --fridgeside-text and --fridgeside-ground.",
    );
    expect(complaints).toHaveLength(1);
  });

  test("are weighed against our own where the shop has set one of the two", () => {
    const { colours, complaints } = chooseColours(own.light, { "--fridgeside-accent": rgb("#e8c4d0") });
    expect(colours).toEqual({});
    expect(complaints[0]).toContain("--fridgeside-accent (#e8c4d0) on our ground (#f1f9fd)");
    expect(complaints[0]).toMatch(/for --fridgeside-accent\.$/);
  });

  test("of an edge need three to one and no more", () => {
    expect(chooseColours(own.light, { "--fridgeside-edge": rgb("#5f7f93") }).complaints).toEqual([]);
    expect(chooseColours(own.light, { "--fridgeside-edge": rgb("#9ab") }).complaints[0]).toContain(
      "3:1 is the least",
    );
  });

  test("a ground on which our red of a danger can't be read is left", () => {
    const shop = { "--fridgeside-card": rgb("#c33") };
    expect(chooseColours(own.light, shop).colours).toEqual({});
  });

  test("whatever a shop sets, every pair can be read in the end and each colour is spoken of once at most", () => {
    const colourOf = (value: fc.Arbitrary<number>): fc.Arbitrary<Rgb> => fc.tuple(value, value, value);
    const colour = colourOf(fc.integer({ min: 0, max: 255 }));
    const near = fc.oneof(
      colourOf(fc.integer({ min: 0, max: 40 })),
      colourOf(fc.integer({ min: 215, max: 255 })),
    );
    const shops = fc.record(
      Object.fromEntries(shopColourNames.map((name) => [name, fc.oneof(colour, near)])) as Record<
        ShopColour,
        fc.Arbitrary<Rgb>
      >,
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(shops, fc.constantFrom("light" as const, "dark" as const), (shop, theme) => {
        const { colours, complaints } = chooseColours(own[theme], shop);
        expect(poorIn({ ...own[theme], ...colours })).toEqual([]);
        expect(complaints.length).toBeLessThanOrEqual(Object.keys(shop).length);
        if (colours.said)
          expect(contrastOf(colours["on-said"] as Rgb, colours.said)).toBeGreaterThanOrEqual(4.5);
      }),
    );
  });
});
