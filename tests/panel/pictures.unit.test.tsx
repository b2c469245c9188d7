// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { render } from "preact";
import { act } from "preact/test-utils";
import { describe, expect, test } from "vitest";
import { createPicture, type Drawing, IcePath } from "../../src/panel/pictures/index.ts";
import type { PathMark } from "../../src/turn/index.ts";

const read = (path: string) => readFileSync(join(import.meta.dirname, "../..", path), "utf8");

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
