import { describe, expect, test } from "vitest";
import type { CutOpenDrawing } from "../../src/panel/cut-open/drawing.ts";
import { sceneOf } from "../../src/panel/cut-open/scene-of.ts";
import { saysSomething } from "../../src/panel/pictures/index.ts";
import { startSession } from "../../src/session/index.ts";
import { createTexts, type Turn, turnOf } from "../../src/turn/index.ts";
import { createCutOpen } from "../../src/workbench/pictures/index.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { type Answers, at, follow, healthy } from "../session/drive.ts";
import { readerOf } from "../turn/reader.ts";

const flow = ownFlow;
const start = startSession(guideFor(flow), at(0));
const texts = createTexts(ownTexts, "en-GB", readerOf(flow));
const drawing: CutOpenDrawing = createCutOpen();
const turnAt = (stop: string, answers: Answers = {}): Turn =>
  turnOf(follow(start, { ...healthy, ...answers }, stop), texts, at(0));
const tankFed = { "opening.supply": "tank" };

const sceneAt = (turn: Turn) => sceneOf(turn, drawing);
const stationsIn = (turn: Turn) =>
  sceneAt(turn)
    .labels.map(({ station }) => station)
    .sort();
/** The shapes of one group of the drawing, as paths. */
const pathsOf = (station: string) =>
  new Set(
    drawing.groups
      .filter(({ at }) => at === station)
      .flatMap(({ shapes }) => shapes.map((shape) => shape.slice(shape.indexOf(" ") + 1))),
  );
const copperIn = (turn: Turn) =>
  sceneAt(turn)
    .shapes.filter(({ tone }) => /^k\d|\bpk\b/.test(tone))
    .map(({ path }) => path);

describe("the machine cut open", () => {
  test("has nothing to say in the opening, and something from the first check on", () => {
    for (const turn of ["opening.danger", "opening.symptom", "opening.supply"])
      expect(saysSomething(turnAt(turn))).toBe(false);
    expect(saysSomething(turnAt("control-lock.look"))).toBe(true);
    const blank = turnAt("control-lock.look").path.map((mark) => ({
      ...mark,
      here: false,
      state: "unseen" as const,
    }));
    expect(saysSomething({ path: blank })).toBe(false);
  });

  test("says nothing while nobody knows whether the water comes from a tank or a tap", () => {
    const turn = turnAt("control-lock.look");
    const [mark] = turn.path;
    if (!mark) throw new Error("A turn has a path");
    const both = ["tank", "filter"].map((station) => ({ ...mark, station }));
    expect(saysSomething({ path: [...turn.path, ...both] })).toBe(false);
  });

  test("a step at the tap, or at the tank, shows the machine as one that has it", () => {
    const [mark, ...rest] = turnAt("control-lock.look").path;
    if (!mark) throw new Error("A turn has a path");
    const at = (here: string) =>
      [mark, ...rest]
        .filter(({ station }) => !["tank", "stop-tap", "filter"].includes(station))
        .map((one) => ({ ...one, here: false }))
        .concat(
          ["tank", "stop-tap", "filter"].map((station) => ({ ...mark, station, here: station === here })),
        );
    const namedAt = (here: string) =>
      sceneOf({ path: at(here), changed: [] }, drawing).labels.map(({ station }) => station);
    expect(namedAt("stop-tap")).toContain("stop-tap");
    expect(namedAt("stop-tap")).not.toContain("tank");
    expect(namedAt("tank")).toContain("tank");
    expect(namedAt("tank")).not.toContain("filter");
    expect(namedAt("nowhere")).toEqual([]);
  });

  test("stands there shut in the opening: no name, nothing in copper, nothing of its inside", () => {
    const turn = turnAt("opening.symptom");
    expect(sceneAt(turn).labels).toEqual([]);
    expect(copperIn(turn)).toEqual([]);
    const shown = new Set(sceneAt(turn).shapes.map(({ path }) => path));
    expect(shown.size).toBeGreaterThan(10);
    for (const station of ["ice-tray", "ice-bin", "cold"])
      for (const path of pathsOf(station)) expect(shown).not.toContain(path);
  });

  test("has its doors open from the first check on", () => {
    const shut = new Set(sceneAt(turnAt("opening.symptom")).shapes.map(({ path }) => path));
    const open = sceneAt(turnAt("control-lock.look")).shapes.map(({ path }) => path);
    const doors = [...shut].filter((path) => !open.includes(path));
    expect(doors.length).toBeGreaterThan(0);
    for (const path of pathsOf("ice-tray")) expect(open).toContain(path);
  });

  test("of a plumbed machine names tap, tube, filter and valve, and no tank", () => {
    const stations = stationsIn(turnAt("flow-test.run"));
    expect(stations).toEqual(
      expect.arrayContaining([
        "filter",
        "fill-tube",
        "ice-bin",
        "ice-tray",
        "inlet-valve",
        "stop-tap",
        "supply-line",
      ]),
    );
    expect(stations).not.toContain("tank");
  });

  test("of a machine with a tank names the tank, and no tap, filter or valve", () => {
    const turn = turnAt("tank.look", tankFed);
    const stations = stationsIn(turn);
    expect(stations).toEqual(expect.arrayContaining(["fill-tube", "ice-bin", "ice-tray", "tank"]));
    for (const one of ["stop-tap", "filter", "inlet-valve"]) expect(stations).not.toContain(one);
    const drawn = new Set(sceneAt(turn).shapes.map(({ path }) => path));
    expect([...pathsOf("stop-tap")].filter((path) => drawn.has(path))).toEqual([]);
  });

  test("of a machine with a tank stays so where a valve was cleared on the way", () => {
    const turn = turnAt("tank.look", tankFed);
    const mark = turn.path[0] as Turn["path"][number];
    const path = [...turn.path, { ...mark, station: "inlet-valve", state: "clear" as const, here: false }];
    expect(sceneOf({ ...turn, path }, drawing)).toEqual(sceneAt(turn));
  });

  test("in a complaint that is not about water shows neither tap nor tank", () => {
    const turn = turnAt("warm-where.look", { "opening.symptom": "too-warm" });
    expect(sceneAt(turn).shapes.filter(({ tone }) => /^p[fd]/.test(tone))).toEqual([]);
    expect(stationsIn(turn)).toEqual(["cold"]);
  });

  test("names what acts on the water from outside only once something is known of it", () => {
    const turn = turnAt("flow-test.run");
    const unknown = turn.path.filter(({ above, here, state }) => above && !here && state === "unseen");
    expect(unknown.length).toBeGreaterThan(0);
    for (const { station } of unknown) expect(stationsIn(turn)).not.toContain(station);
    expect(stationsIn(turn)).toContain("controls");
  });

  test("says of each station what the path says, by the name that the locale has", () => {
    const turn = turnAt("flow-test.run");
    for (const { station, name, state, here } of sceneAt(turn).labels)
      expect(turn.path).toContainEqual(expect.objectContaining({ station, name, state, here }));
    expect(sceneAt(turn).labels.find(({ here }) => here)?.name).toBe("Filter");
  });

  test.each([
    ["filter", "flow-test.run", {}],
    ["fill-tube", "fill-tube.look", {}],
    ["tank", "tank.look", tankFed],
    ["ice-bin", "ice-bin.look", {}],
  ])("has copper at the %s alone where %s is asked about it", (station, stop, answers) => {
    const copper = copperIn(turnAt(stop, answers));
    expect(copper.length).toBeGreaterThan(0);
    expect(copper.filter((path) => !pathsOf(station).has(path))).toEqual([]);
  });

  test("has a tube in copper by its wall, so that what is in it still shows", () => {
    const turn = turnAt("flow-test.run");
    const path = turn.path.map((mark) => ({ ...mark, here: mark.station === "supply-line" }));
    const tones = sceneOf({ ...turn, path }, drawing).shapes.map(({ tone }) => tone);
    expect(tones).toContain("pf pk");
    expect(tones.filter((tone) => /^k\d/.test(tone))).toEqual([]);
  });
});

describe("what we had changed", () => {
  const changed = (...ids: string[]) => ({
    ...turnAt("flow-test.run"),
    changed: ids.map((id) => ({ id, text: id })),
  });
  const pathsIn = (turn: Turn) => new Set(sceneAt(turn).shapes.map(({ path }) => path));

  test("the line is dry below a tap that is closed, and holds water above it", () => {
    const lineOf = (turn: Turn) => sceneAt(turn).shapes.filter(({ tone }) => /^p[fd]i$/.test(tone));
    expect(lineOf(changed()).every(({ tone }) => tone === "pfi")).toBe(true);
    const wet = lineOf(changed("water")).filter(({ tone }) => tone === "pfi");
    expect(wet.length).toBe(1);
    expect(pathsOf("stop-tap")).toContain(wet[0]?.path);
  });

  test.each(["water", "plug", "machine", "bin", "panel", "filter"])(
    "shows that the %s is not as it was",
    (id) => {
      expect(pathsIn(changed(id))).not.toEqual(pathsIn(changed()));
    },
  );

  test("the name of a bin that is out points to where it is", () => {
    const placeIn = (turn: Turn) => sceneAt(turn).labels.find(({ station }) => station === "ice-bin")?.at;
    expect(placeIn(changed("bin"))).not.toEqual(placeIn(changed()));
  });
});

describe("the names", () => {
  const everywhere = (...ids: string[]) => {
    const turn = turnAt("flow-test.run");
    const mark = turn.path[0] as Turn["path"][number];
    const path = flow.stations.order
      .filter((station) => station !== "tank")
      .map((station) => ({
        ...mark,
        station,
        name: station,
        here: false,
        state: "clear" as const,
        above: false,
      }));
    return { ...turn, path, changed: ids.map((id) => ({ id, text: id })) };
  };

  test("of all stations at once stand apart from each other and within the drawing", () => {
    for (const turn of [everywhere(), everywhere("bin", "machine", "filter", "water")]) {
      const { labels } = sceneAt(turn);
      expect(labels).toHaveLength(turn.path.length);
      for (const side of ["left", "right"] as const) {
        const feet = labels.filter((label) => label.side === side).map(({ foot }) => foot);
        // Two lines of 13 px where the drawing is 356 px wide, its narrowest.
        for (const [i, foot] of feet.entries())
          expect(foot - (feet[i - 1] ?? -20)).toBeGreaterThan(2 * 13 * 1.1 * (540 / 356));
        expect(Math.max(...feet)).toBeLessThan(drawing.frame.height - 20);
      }
    }
  });

  test("each station of the path has its place in the drawing", () => {
    const placed = new Set(drawing.places.map(({ station }) => station));
    expect(flow.stations.order.filter((station) => !placed.has(station))).toEqual([]);
  });
});
