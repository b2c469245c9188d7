import { Window } from "happy-dom";
import type { ChartConfig, StateConfig } from "../../src/chart/index.ts";

/** A drawing as read from its SVG, in the page's own units. */
export type Drawn = {
  root: Element;
  turns: { id: string; x: number; y: number; width: number; height: number }[];
  /** Every way that is drawn or written: from, event, to. */
  ways: string[];
  lines: { from: string; to: string; points: { x: number; y: number }[] }[];
  /** For each check: its hazards in words, and whether the mark stands beside them. */
  hazards: Map<string, { words: string; marked: boolean }>;
};

/** Reads a drawing back. @throws Error where it is no well-formed XML */
export function readDrawing(svg: string): Drawn {
  const window = new Window();
  const tree = new window.DOMParser().parseFromString(svg, "image/svg+xml");
  if (tree.querySelector("parsererror")) throw new Error("The drawing is not well-formed");
  const root = tree.documentElement as unknown as Element;
  const all = (selector: string, within: Element = root) => [...within.querySelectorAll(selector)];
  const turns = all("g[data-check] g[data-state]").map((one) => {
    const { x: dx, y: dy } = shiftOf(one);
    const frame = one.querySelector("rect");
    const of = (name: string) => Number(frame?.getAttribute(name));
    return {
      id: textOf(one, "data-state"),
      x: of("x") + dx,
      y: of("y") + dy,
      width: of("width"),
      height: of("height"),
    };
  });
  const ways = all("[data-events]").flatMap((one) =>
    textOf(one, "data-events")
      .split(" ")
      .map((event) => `${textOf(one, "data-from")} ${event} ${textOf(one, "data-to")}`),
  );
  const lines = all("path[data-events]").map((one) => {
    const { x: dx, y: dy } = shiftOf(one);
    const steps = [...textOf(one, "d").matchAll(/[ML](\S+) (\S+)/g)];
    const points = steps.map(([, x, y]) => ({ x: Number(x) + dx, y: Number(y) + dy }));
    return { from: textOf(one, "data-from"), to: textOf(one, "data-to"), points };
  });
  const hazards = new Map(
    all("g[data-check]").map((one) => {
      const words = all("text", one).map((text) => text.textContent ?? "");
      const found = words.find((text) => /^(danger|warning|caution|notice): /.test(text)) ?? "";
      return [textOf(one, "data-check"), { words: found, marked: one.querySelector(".hazard") !== null }];
    }),
  );
  return { root, turns, ways, lines, hazards };
}

/** Every way out of the turns of a scenario that is not the same everywhere, as `readDrawing` writes them. */
export function waysOf(config: ChartConfig, scenario: string): string[] {
  const checks = Object.values(config.states[scenario]?.states ?? {}).filter(({ states }) => states);
  const all = checks.flatMap((check) => [check, ...Object.values(check.states ?? {})]);
  return all.filter(({ meta }) => meta).flatMap((turn) => waysOut(turn, all));
}

function waysOut(turn: StateConfig, siblings: StateConfig[]): string[] {
  return Object.entries(turn.on ?? {}).flatMap(([event, ways]) => {
    if (event === "session-resumed") return [];
    return [ways].flat().map((way) => {
      const target = way.target.slice(1);
      // A state that waits for nobody passes on to the first turn, unless one is being come back to.
      const passing = siblings.find(({ id, meta }) => id === target && !meta);
      const inside = passing?.initial && `${target}/${passing.initial}`;
      const to = inside ?? passing?.always?.find(({ guard }) => !guard)?.target.slice(1) ?? target;
      const verdict = event === "measured" ? `.${way.actions?.[0]?.params.answer}` : "";
      return `${turn.id} ${event}${verdict} ${to}`;
    });
  });
}

const textOf = (element: Element, name: string) => element.getAttribute(name) ?? "";

function shiftOf(element: Element): { x: number; y: number } {
  const holder = element.closest("g[transform]");
  const [, x = "0", y = "0"] = /translate\((\S+) (\S+)\)/.exec(holder?.getAttribute("transform") ?? "") ?? [];
  return { x: Number(x), y: Number(y) };
}
