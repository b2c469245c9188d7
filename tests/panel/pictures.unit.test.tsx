// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type ComponentChild, render } from "preact";
import { act } from "preact/test-utils";
import { describe, expect, test } from "vitest";
import { createPicture, type Drawing, IcePath } from "../../src/panel/pictures/index.ts";
import type { PathMark } from "../../src/turn/index.ts";

const read = (path: string) => readFileSync(join(import.meta.dirname, "../..", path), "utf8");

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
const drawPath = (...path: PathMark[]) =>
  draw(<IcePath path={path} label="The tap is in order, the filter comes next." />) as SVGElement;
const stationsOf = (picture: Element) => [...picture.querySelectorAll("svg")];
const pathsOf = (station: Element) =>
  [...station.querySelectorAll("path")].map((path) => path.getAttribute("d"));
const left = (station: Element) => Number.parseFloat(station.getAttribute("x") as string);

/** The whole way from design.md, and the way of a machine with a tank. */
const water = "stop-tap supply-line filter inlet-valve fill-tube ice-tray ice-bin chute".split(" ");
const acting = "cold door seal controls".split(" ");

describe("the ice path", () => {
  test("is one picture with the sentence that its caller gave", () => {
    const picture = drawPath(mark("filter"));
    expect(picture.getAttribute("role")).toBe("img");
    expect(picture.getAttribute("aria-label")).toBe("The tap is in order, the filter comes next.");
  });

  test("draws each station once, however many of them there are", () => {
    const all = [...water, ...acting];
    for (const count of [1, 3, 12, all.length]) {
      const stations = stationsOf(drawPath(...all.slice(0, count).map((id) => mark(id))));
      expect(stations).toHaveLength(count);
      expect(new Set(stations.map((station) => pathsOf(station)[0])).size).toBe(count);
    }
  });

  test("keeps the order it was given along the water's way, on one continuous line", () => {
    const picture = drawPath(...["tank", ...water.slice(3)].map((id) => mark(id)));
    const places = stationsOf(picture).map(left);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(picture.querySelectorAll("line")).toHaveLength(1);
    expect(new Set(stationsOf(picture).map((station) => station.getAttribute("y"))).size).toBe(1);
  });

  test("puts what acts on the water above the line, wherever it stands in the list", () => {
    const picture = drawPath(mark("door"), mark("filter"), mark("controls"), mark("chute"));
    const height = (i: number) => Number(stationsOf(picture)[i]?.getAttribute("y"));
    // Drawn first: the two that act from above, in their order.
    for (const above of [height(0), height(1)]) expect(above).toBeLessThan(height(2));
    expect(height(2)).toBe(height(3));
  });

  test("keeps two neighbours 24 px apart on a screen of 320 px", () => {
    // 24 px: the size of a mark with its ring. The width is the one of WCAG 2.2, 1.4.10.
    for (const row of [water, acting]) {
      const places = stationsOf(drawPath(...row.map((id) => mark(id)))).map((place) => left(place) * 3.2);
      const gaps = places.slice(1).map((place, i) => place - (places[i] as number));
      expect(Math.min(...gaps)).toBeGreaterThanOrEqual(24);
    }
  });

  test("tells every state from every other by a shape, not by colour alone", () => {
    const shapes = states.map(
      (state) => pathsOf(stationsOf(drawPath(mark("filter", state)))[0] as Element)[1],
    );
    expect(new Set(shapes).size).toBe(states.length);
    expect(shapes[states.indexOf("unseen")]).toBeNull();
  });

  test("rings the station that is looked at, and no other", () => {
    const picture = drawPath(mark("stop-tap", "clear"), mark("filter", "suspect", true), mark("chute"));
    expect(stationsOf(picture).map((station) => station.querySelectorAll("circle").length)).toEqual([
      0, 1, 0,
    ]);
  });

  test("names the station that is looked at rather than a suspect", () => {
    const picture = drawPath(mark("stop-tap", "suspect"), mark("door", "unseen", true));
    expect(picture.textContent).toBe("The door");
  });

  test("names the first suspect when nothing is looked at, and nothing when nothing is known", () => {
    expect(drawPath(mark("filter", "suspect"), mark("chute", "suspect")).textContent).toBe("The filter");
    expect(drawPath(mark("filter"), mark("chute", "clear")).textContent).toBe("");
  });

  test("draws a plain box for a station it has never heard of", () => {
    const [station] = stationsOf(drawPath(mark("heat-exchanger", "suspect")));
    expect(pathsOf(station as Element)).toHaveLength(2);
    expect(pathsOf(station as Element)[0]).toMatch(/^M/);
  });
});

/** A page with the picture "tank", and what makes its drawing come. */
async function open(drawing: Drawing | null) {
  const known = new Map<string, Drawing>();
  let come = () => {};
  const load = () => new Promise<void>((resolve) => (come = resolve));
  const Picture = createPicture({ known, load });
  const page = document.createElement("div");
  await act(() => render(<Picture id="tank" />, page));
  const frame = page.innerHTML;
  if (drawing) known.set("tank", drawing);
  await act(async () => come());
  return { page, frame };
}

const drawing: Drawing = {
  title: "A tank.",
  shapes: ["b1 M0 0l9 9z", "Te 20 30 The water tank"],
  legend: [],
};

describe("a picture", () => {
  test("has its frame before its drawing has come, which says nothing yet", async () => {
    const page = document.createElement("div");
    page.innerHTML = (await open(drawing)).frame;
    const svg = page.querySelector("svg");
    expect(svg?.getAttribute("viewBox")).toBe("0 0 320 168");
    expect(svg?.getAttribute("aria-hidden")).toBe("true");
    expect(svg?.children).toHaveLength(0);
  });

  test("is one image that says what it shows, of paths and words", async () => {
    const { page } = await open(drawing);
    const svg = page.querySelector("svg");
    expect(svg?.getAttribute("role")).toBe("img");
    expect(svg?.getAttribute("aria-label")).toBe("A tank.");
    expect(svg?.getAttribute("aria-hidden")).not.toBe("true");
    const [path, text] = svg?.children ?? [];
    expect([path?.getAttribute("class"), path?.getAttribute("d")]).toEqual(["b1", "M0 0l9 9z"]);
    expect([text?.getAttribute("x"), text?.getAttribute("y"), text?.textContent]).toEqual([
      ...["20", "30", "The water tank"],
    ]);
    expect(page.querySelector("ol")).toBeNull();
  });

  test("leaves nothing where no drawing comes", async () => {
    expect((await open(null)).page.innerHTML).toBe("");
  });

  test("has the names of its numbers below it", async () => {
    const { page } = await open({ ...drawing, legend: ["Lid", "Float"] });
    expect([...page.querySelectorAll("ol li")].map((item) => item.textContent)).toEqual(["Lid", "Float"]);
  });
});

test("the components take their colours from the sheet and need nothing that a strict policy forbids", () => {
  const forbidden = /style=|<style|innerHTML|#[0-9a-f]{3,6}\b|url\(/i;
  const files = ["ice-path.tsx", "picture.tsx", "ice-path.css"];
  expect(files.filter((file) => forbidden.test(read(`src/panel/pictures/${file}`)))).toEqual([]);
});
