import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { ownFlow } from "../own-flow.ts";

const flow = ownFlow;
const limits = Object.entries(flow.limits);
const root = fileURLToPath(new URL("../../", import.meta.url));
const textOf = (folder: string, suffix: RegExp) =>
  readdirSync(root + folder, { recursive: true, encoding: "utf8" })
    .filter((path) => suffix.test(path))
    .map((path) => readFileSync(`${root}${folder}/${path}`, "utf8"))
    .join("\n");

describe("a limit", () => {
  // SI and the units accepted with it are written as in the SI Brochure (9th ed.): s, min, h, °C, K, g, l;
  // ml is the brochure's mL in the spelling of our texts. "1" is the unit of a bare ratio; min/h is what an hour of
  // waiting costs in minutes of attention.
  const units = "ml/s l/min ml l g kg s min h min/h day month year °C K kPa 1 character".split(" ");
  // What nobody published says so; the rest names who did.
  const admitted = { P: /common practice/, J: /^Judgement/ } as const;

  test.each(limits)("%s says where it comes from, or that it is common practice or judgement", (_, limit) => {
    const { confidence = "", source = "" } = limit;
    const words = admitted[confidence as keyof typeof admitted];
    expect(source).toMatch(words ?? /[A-Z].*\d|USDA|advice|Measured/);
  });

  test.each(limits)("%s has a unit that is known", (_, { unit }) => {
    expect(units).toContain(unit);
  });

  const code = textOf("src", /\.tsx?$/);
  const texts = textOf("locales", /\.yaml$/);
  const lasting = Object.values(flow.checks).flatMap(({ turns }) =>
    Object.values(turns).flatMap(({ lasts, inside = [] }) => [lasts, ...inside.map(({ after }) => after)]),
  );

  test.each(limits)(
    "%s is used: by the code, in a text, or as the length of a wait or of a stage of it",
    (id) => {
      const used = code.includes(`"${id}"`) || texts.includes(`{{${id}}}`) || lasting.includes(id);
      expect(used).toBe(true);
    },
  );

  test.each(limits)("%s is a number that somebody may measure by", (_, { value }) => {
    expect(Number.isFinite(value)).toBe(true);
  });
});

/**
 * The numbers of the trade's handbook, one by one: a slip of the finger in limits.yaml is found here.
 * Sources as in limits.yaml; where none is named there, common practice, no source.
 */
describe("the numbers of the trade", () => {
  test.each<[id: string, value: number, unit: string]>([
    ["flow-minimum", 150 / 10, "ml/s"],
    ["filter-months", 6, "month"],
    ["ice-return-hours", 24, "h"],
    ["test-cycle-minutes", 6, "min"],
    ["reset-hold-least", 3, "s"],
    ["reset-hold-most", 10, "s"],
    // (EU) 2019/2016 Annex Table 3.
    ["freezer-target", -18, "°C"],
    // USDA FSIS and FDA advice on power cuts, second-hand.
    ["food-fridge-hours", 4, "h"],
    ["food-freezer-half-hours", 24, "h"],
    ["food-freezer-full-hours", 48, "h"],
    // One-sided 95 % point of the normal distribution, any table of it.
    ["coverage", 0.98, "1"],
    // Am. J. Phys. 87(2):110 (2019).
    ["stopwatch", 0.1, "s"],
  ])("%s is %d %s", (id, value, unit) => {
    expect(flow.limits[id]).toMatchObject({ value, unit });
  });
});
