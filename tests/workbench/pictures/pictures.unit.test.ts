import { readFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import type { Resource } from "../../../src/turn/index.ts";
import { createDrawings } from "../../../src/workbench/build/drawings.ts";
import { frame, namesIn, pictures } from "../../../src/workbench/pictures/index.ts";
import { findWords, onlyAmerican, onlyBritish } from "../../locales/spellings.ts";
import { ownFlow, ownTexts } from "../../own-flow.ts";

const flow = ownFlow;
const locales = ownTexts;
const drawings = createDrawings(locales);
const ids = Object.keys(pictures);
const sheet = readFileSync(join(import.meta.dirname, "../../../src/panel/pictures/drawing.css"), "utf8");

/** Turns that a drawing would not help. */
const without: Record<string, string> = {
  "full-thaw.before": "asks what was tried before",
  "full-thaw.thawed": "asks whether it runs again",
  "ice-demand.use": "asks how much ice is used",
  "ice-look.harmless": "asks whether there is more to it",
  "ice-look.vinegar": "a spoon with vinegar is known to all",
  "put-back.all": "its lines name what is put back",
  "room-warmth.change": "asks whether the room can be kept in its range",
  "room-warmth.look": "asks how warm the room is",
  "running-time.give-time": "asks for patience",
  "running-time.since": "asks how long it has run",
};

/** Drawings that a screen asks for, and no turn. */
const onScreens = [
  "rating-plate",
  "plate-top-freezer",
  "plate-bottom-freezer",
  "plate-side-by-side",
  "plate-french-door",
];

const turns = Object.values(flow.checks).flatMap((check) =>
  Object.entries(check.turns).map(([turn, { picture }]) => [`${check.id}.${turn}`, picture] as const),
);
const wordsIn = (tag: string) => (locales[tag]?.["pictures"] ?? {}) as Record<string, Record<string, string>>;
const namesOf = (tag: string) => Object.values({ ...wordsIn("en-GB")["names"], ...wordsIn(tag)["names"] });
const calls = (picture: string) => pictures[picture]?.filter((shape) => shape.startsWith("@")) ?? [];

describe("the drawings", () => {
  test("are there for every turn of every check, but for those where none would help", () => {
    expect(
      turns
        .filter(([, picture]) => !picture)
        .map(([turn]) => turn)
        .sort(),
    ).toEqual(Object.keys(without));
  });

  test("are all shown somewhere", () => {
    const shown = new Set([
      ...turns.map(([, picture]) => picture),
      ...Object.values(flow.gates).map(({ picture }) => picture),
      ...Object.values(flow.opening.turns).map(({ picture }) => picture),
      ...Object.values(flow.parts).map(({ picture }) => picture),
      ...onScreens,
    ]);
    expect(ids.filter((id) => !shown.has(id))).toEqual([]);
  });

  test.each(["en-GB", "en-US"])("have words in %s, and none is left over", (tag) => {
    const { shows, names } = wordsIn("en-GB");
    expect(Object.keys(shows ?? {}).sort()).toEqual([...ids].sort());
    const named = new Set(Object.values(pictures).flatMap(namesIn));
    expect(Object.keys(names ?? {}).sort()).toEqual([...named].sort());
    const own = wordsIn(tag);
    for (const kind of ["shows", "names"] as const)
      for (const [id, text] of Object.entries(own[kind] ?? {}))
        if (tag !== "en-GB") expect(text, id).not.toBe({ shows, names }[kind]?.[id]);
    for (const { title } of Object.values(drawings[tag] ?? {})) expect(title).toMatch(/^[A-Z].*\.$/s);
  });

  test("use no word of the other side of the Atlantic", () => {
    const foreign = { "en-GB": onlyAmerican, "en-US": onlyBritish };
    for (const [tag, words] of Object.entries(foreign))
      for (const text of [...Object.values(drawings[tag] ?? {}).map(({ title }) => title), ...namesOf(tag)])
        expect(findWords(text, words), text).toEqual([]);
  });

  test("that have no words stop the build, by name", () => {
    const { shows, ...rest } = wordsIn("en-GB");
    const { tank: _, ...fewer } = shows ?? {};
    expect(() => createDrawings({ "en-GB": { pictures: { ...rest, shows: fewer } } })).toThrow(
      '"shows.tank"',
    );
  });

  test("weigh little: 1.6 kB of brotli each at most with their words, half of them under 0.6", () => {
    const weights = Object.values(drawings["en-GB"] ?? {}).map(
      (drawing) => brotliCompressSync(JSON.stringify(drawing)).length,
    );
    expect(Math.max(...weights)).toBeLessThan(1600);
    expect(weights.sort((a, b) => a - b)[weights.length >> 1]).toBeLessThan(600);
  });

  test.each(ids)("%s is made of paths in tones and lines of the sheet, and of no colour of its own", (id) => {
    for (const shape of pictures[id]?.filter((one) => !one.startsWith("@")) ?? []) {
      const [, tone, path] = shape.match(/^(\w+) (.*)$/) ?? [];
      expect(sheet).toMatch(new RegExp(`\\.fs-pic \\.${tone}\\b`));
      // Path data as SVG 2, 9.3 has it: a moveto first, then commands and numbers.
      expect(path).toMatch(/^M-?[\d.]+[ -][\d.-]+([mlhvqtaz][\d\s.-]*)*$/i);
    }
  });

  test.each(ids.filter((id) => !/^(level|tap-water)$/.test(id)))("%s has something in copper", (id) => {
    expect(pictures[id]?.some((shape) => /^(k\d|a2|ar|wk) /.test(shape))).toBe(true);
  });

  test.each(ids)("%s names two to four parts, or six at most with numbers", (id) => {
    const names = namesIn(pictures[id] ?? []);
    if (id === "wait" || /^plate-/.test(id)) expect(names).toEqual([]);
    else expect(names.length).toBeGreaterThanOrEqual(id === "door-open" ? 1 : 2);
    expect(names.length).toBeLessThanOrEqual(6);
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(ids)(
    "%s has its dots and names within its frame, and room for the words of each language",
    (id) => {
      for (const call of calls(id)) {
        const [part = "", ...places] = call.slice(1).split(" ");
        const [x = 0, y = 0, toX = 0, toY = 0] = places.map(Number);
        for (const [across, down] of [
          [x, y],
          [toX, toY],
        ] as const) {
          expect(across).toBeGreaterThan(0);
          expect(across).toBeLessThan(frame.width);
          expect(down).toBeGreaterThan(8);
          expect(down).toBeLessThan(frame.height - 4);
        }
        if (calls(id).length > 3) continue;
        // 7 px a letter is what a narrow face of 14.5 px takes at the most.
        const room = (toX < x ? toX : frame.width - toX) / 7;
        for (const tag of Object.keys(drawings)) {
          const lines = (wordsIn(tag)["names"]?.[part] ?? wordsIn("en-GB")["names"]?.[part] ?? "").split(
            "\n",
          );
          expect(lines.length).toBeLessThanOrEqual(2);
          expect(Math.abs(toY - frame.height / 2) + lines.length * 7.5, `${part} in ${id}`).toBeLessThan(84);
          for (const line of lines) expect(line.length, `${line} in ${id}`).toBeLessThanOrEqual(room);
        }
      }
    },
  );

  test.each(ids.filter((id) => id.startsWith("plate-")))(
    "%s numbers the places that its list in words has",
    (id) => {
      const words = String((locales["en-GB"]?.["measure"] as Resource | undefined)?.[id]);
      const numbers = calls(id).map((call) => call[1]);
      expect(numbers).toEqual(words.split("\n").map((_, place) => `${place + 1}`));
      const places = calls(id).map((call) => call.split(" ").slice(3).map(Number));
      for (const [place, [x = 0, y = 0]] of places.entries())
        for (const [otherX = 0, otherY = 0] of places.slice(place + 1))
          expect(Math.hypot(x - otherX, y - otherY)).toBeGreaterThan(20);
    },
  );
});
