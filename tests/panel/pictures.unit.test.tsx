// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type ComponentChild, render } from "preact";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import drawings from "../../src/panel/pictures/drawings.json";
import { createPicture, IcePath } from "../../src/panel/pictures/index.ts";
import type { PathMark } from "../../src/turn/index.ts";

const Picture = createPicture(drawings);
const pictureIds = Object.keys(drawings.pictures);

const read = (path: string) => readFileSync(join(import.meta.dirname, "../..", path), "utf8");
const textsIn = (language: string): Record<string, string> =>
  parse(read(`locales/${language}/pictures.yaml`));

/** Draws into a page of its own and returns the outermost svg, or null where nothing was drawn. */
function draw(drawing: ComponentChild): SVGElement | null {
  const page = document.createElement("div");
  render(drawing, page);
  return page.querySelector("svg");
}

const states = ["clear", "fixed", "suspect", "unseen"] as const;
const mark = (station: string, state: PathMark["state"] = "unseen", here = false): PathMark => ({
  station,
  name: `The ${station}`,
  state,
  here,
  above: acting.includes(station),
});
const drawPath = (...path: PathMark[]) => {
  const page = document.createElement("div");
  render(<IcePath path={path} label="The tap is in order, the filter comes next." />, page);
  return page.firstElementChild as HTMLElement;
};
const namesOf = (picture: Element) => [...picture.children].map(({ lastChild }) => lastChild?.textContent);

const acting = "cold door seal controls".split(" ");

describe("the ice path", () => {
  test("is one picture with the sentence that its caller gave", () => {
    const picture = drawPath(mark("filter"));
    expect(picture.getAttribute("role")).toBe("img");
    expect(picture.getAttribute("aria-label")).toBe("The tap is in order, the filter comes next.");
  });

  test("names each station of the water's way, in the order it was given", () => {
    const picture = drawPath(mark("tank"), mark("inlet-valve", "clear"), mark("ice-tray"));
    expect(namesOf(picture)).toEqual(["The tank", "The inlet-valve", "The ice-tray"]);
  });

  test("names what acts on the water from outside only where something is known of it or we are there", () => {
    const picture = drawPath(
      mark("filter"),
      mark("door"),
      mark("seal", "clear"),
      mark("cold", "unseen", true),
    );
    expect(namesOf(picture)).toEqual(["The filter", "The seal", "The cold"]);
  });

  test("tells a suspect, what is cleared and what nobody has looked at by a sign, not by colour alone", () => {
    const picture = drawPath(...states.map((state) => mark(state, state)));
    expect([...picture.querySelectorAll("i")].map(({ textContent }) => textContent)).toEqual([
      "✓",
      "✓",
      "?",
      "",
    ]);
  });

  test("marks the station that is looked at, and no other", () => {
    const picture = drawPath(mark("stop-tap", "clear"), mark("filter", "suspect", true), mark("chute"));
    expect(namesOf(picture)).toHaveLength(3);
    expect([...picture.querySelectorAll(".here")].map(({ lastChild }) => lastChild?.textContent)).toEqual([
      "The filter",
    ]);
  });
});

describe("the pictures", () => {
  const british = textsIn("en-GB");

  test("are all there", () => {
    expect([...pictureIds].sort()).toEqual(
      (
        "bypass-plug control-lock danger door-closing door-seal fill-tube filter-date filter-seated flow-test " +
        "freezer-temperature fridge-temperature gate-panel gate-water ice-bin ice-maker-switch ice-under-maker inlet-valve " +
        "paper-strip plate-bottom-freezer plate-french-door plate-side-by-side plate-top-freezer " +
        "rating-plate reset-button stop-tap supply-line test-cycle too-full wait"
      ).split(" "),
    );
  });

  test("have a text each, and no text is left over", () => {
    expect(Object.keys(british).sort()).toEqual([...pictureIds].sort());
    expect(Object.values(british).filter((text) => !/^[A-Z].*\.$/s.test(text))).toEqual([]);
  });

  test("differ in en-US only where a text differs", () => {
    const american = textsIn("en-US");
    expect(Object.keys(american).filter((id) => british[id] === american[id])).toEqual([]);
    expect(Object.keys(american).filter((id) => !(id in british))).toEqual([]);
  });

  test.each(pictureIds)("%s is one picture that says what it shows", (id) => {
    const picture = draw(<Picture id={id} title="What it shows" />);
    expect(picture?.getAttribute("role")).toBe("img");
    expect(picture?.getAttribute("aria-label")).toBe("What it shows");
  });

  test.each(pictureIds)("%s is made of shapes that a browser can read", (id) => {
    const shapes = [...(draw(<Picture id={id} title="" />) as SVGElement).querySelectorAll("*")];
    expect(shapes.length).toBeGreaterThan(3);
    for (const shape of shapes) {
      // Path data as SVG 2, 9.3 has it: a moveto first, then commands and numbers.
      if (shape.localName === "path")
        expect(shape.getAttribute("d")).toMatch(/^M-?[\d.]+[ -][\d.]+([mlhvqtaz][\d\s.-]*)*$/i);
      if (shape.localName === "g") {
        expect(shape.getAttribute("transform")).toMatch(/^translate\(\d+ \d+\)$/);
        expect(shape.children.length).toBeGreaterThan(0);
      }
      if (shape.localName === "rect")
        expect(["x", "y", "width", "height"].map((side) => shape.getAttribute(side)).join(" ")).toMatch(
          /^-?\d+ -?\d+ \d+ \d+$/,
        );
    }
  });

  test.each(pictureIds)("%s uses no line style that the sheet does not know", (id) => {
    const sheet = read("src/panel/pictures/pictures.css");
    const styles = [...(draw(<Picture id={id} title="" />) as SVGElement).querySelectorAll("[class]")].map(
      (shape) => shape.getAttribute("class"),
    );
    // `k`, plain ink, is what every line is by default.
    expect(styles.filter((style) => style !== "k" && !sheet.includes(`.fs-pic .${style}`))).toEqual([]);
  });

  test("mark the model code on the rating plate, and cross three other numbers out", () => {
    const plate = draw(<Picture id="rating-plate" title="" />) as SVGElement;
    // The row that is framed in the accent colour holds the code.
    const [frame] = plate.querySelectorAll("rect.c");
    const [top, height] = ["y", "height"].map((side) => Number(frame?.getAttribute(side)));
    const texts = [...plate.querySelectorAll("text")];
    const framed = texts.filter((text) => {
      const foot = Number(text.getAttribute("y"));
      return foot > (top as number) && foot < (top as number) + (height as number);
    });
    expect(framed.map((text) => text.textContent)).toEqual(["MOD.", "LF-24B/8"]);
    expect(drawings.pictures["rating-plate"].filter((part) => part.startsWith("@ no"))).toHaveLength(3);
  });

  test.each(pictureIds.filter((id) => id.startsWith("plate-")))(
    "%s numbers as many places as its list in words has, and apart from each other",
    (id) => {
      const numbers = [...(draw(<Picture id={id} title="" />) as SVGElement).querySelectorAll("text")];
      const places = numbers.map((number) =>
        (number.parentElement?.getAttribute("transform") ?? "").match(/\d+/g)?.map(Number),
      );
      const words: Record<string, string> = parse(read("locales/en-GB/measure.yaml"));
      const lines = words[id]?.split("\n") ?? [];
      expect(numbers.map((number) => number.textContent)).toEqual(lines.map((_, index) => `${index + 1}`));
      // The circle around a number is 12 wide with its line.
      for (const [index, [x = 0, y = 0] = []] of places.entries())
        for (const [otherX = 0, otherY = 0] of places.slice(index + 1) as number[][])
          expect(Math.hypot(x - otherX, y - otherY)).toBeGreaterThan(12);
    },
  );

  test.each(["", "no-such-picture", "constructor", "__proto__"])("draw nothing for the id “%s”", (id) => {
    expect(draw(<Picture id={id} title="" />)).toBeNull();
  });
});

test("the folder takes its colours from the theme and needs nothing that a strict security policy forbids", () => {
  const forbidden = /style=|<style|innerHTML|#[0-9a-f]{3,6}\b|url\(/i;
  const files = ["ice-path.tsx", "picture.tsx", "drawings.json", "ice-path.css", "pictures.css"];
  expect(files.filter((file) => forbidden.test(read(`src/panel/pictures/${file}`)))).toEqual([]);
});
