import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const rules = ["panel.css", "controls.css", "later.css", "later-colours.css", "thread.css"]
  .map((file) => readFileSync(new URL(`../../../src/panel/frame/${file}`, import.meta.url), "utf8"))
  .join("\n");

/** The colours of all blocks that start with a selector. */
function coloursOf(selector: string): Record<string, string> {
  const block = rules
    .split(selector)
    .slice(1)
    .map((rest) => rest.split("}")[0])
    .join();
  return Object.fromEntries(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{3,6})(?: !important)?;/g)].map(([, name, colour]) => [
      name,
      colour ?? "",
    ]),
  );
}

/** Contrast as WCAG 2.2 defines it: (L1 + 0.05) / (L2 + 0.05), L the relative luminance of sRGB. */
function contrast(one: string, other: string): number {
  const luminance = (colour: string) => {
    const hex = colour.length === 4 ? colour.replace(/[0-9a-f]/g, "$&$&") : colour;
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
      const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [darker = 0, lighter = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

const byDevice = ':host(:not([theme="light"]):not([data-fs-page="light"])) {';

test("black on white is 21 to 1, as in the definition", () => {
  expect(contrast("#000", "#fff")).toBeCloseTo(21, 5);
});

describe.each([
  ["light", coloursOf(":host {")],
  ["dark, chosen by the shop", coloursOf(':host([data-fs-page="dark"]) {')],
  ["dark, chosen by the reader's device", coloursOf(byDevice)],
])("%s", (_, colours) => {
  const of = (name: string) => colours[`fs-${name}`] ?? "missing";

  test.each([
    // AAA for what is read, AA for what is said in colour, 3 to 1 for the edge of a control (WCAG 1.4.6, 1.4.3, 1.4.11).
    ["ink", ["surface", "raised", "ice"], 7],
    ["soft", ["surface", "raised"], 7],
    ["soft", ["ice"], 4.5],
    ["accent", ["surface", "raised"], 4.5],
    ["on-accent", ["accent"], 4.5],
    ["wrong", ["surface", "raised"], 4.5],
    ["copper", ["surface", "raised"], 4.5],
    ["edge", ["surface", "raised"], 3],
    ["wall", ["surface", "raised", "ice"], 3],
  ])("%s can be read on %j", (name, grounds, least) => {
    for (const ground of grounds) expect(contrast(of(name), of(ground))).toBeGreaterThanOrEqual(least);
  });
});

test("both ways into the dark give the same colours", () => {
  expect(coloursOf(':host([data-fs-page="dark"]) {')).toEqual(coloursOf(byDevice));
});

test.each([".danger {", ".warning {", ".caution {", ".signal {"])(
  "the signal word on %s can be read",
  (selector) => {
    const { word = "missing", "on-word": onWord = "#fff" } = coloursOf(`\n${selector}`);
    expect(contrast(word, onWord)).toBeGreaterThanOrEqual(4.5);
  },
);
