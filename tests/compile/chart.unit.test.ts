import { describe, expect, test } from "vitest";
import { composeChart } from "../../src/compile/index.ts";
import { memoryOf, metaOf, startSession } from "../../src/session/index.ts";
import { graphOf } from "../../src/workbench/verify/index.ts";
import { ownFlow } from "../own-flow.ts";
import {
  type Answers,
  at,
  celsius,
  fittedOn,
  flowOf,
  follow,
  healthy,
  iceCelsius,
  inTradeOrder,
  runsOut,
} from "../session/drive.ts";
import { afterChange, lowFlow, noPlug, nothingFound, proved, putRight, withPlug } from "./written-paths.ts";

const flow = ownFlow;
const guide = inTradeOrder(flow);
const start = (model: string | null = null) => startSession(guide, at(0), model);
/** The written paths are those of one scenario; the others have paths of their own, in the tests of scenarios. */
const { proofs = [] } = flow.scenarios["no-ice-plumbed"] ?? {};

describe("a cause that a check proves", () => {
  test("has a written path here, every one of them", () => {
    expect(Object.keys(proved).sort()).toEqual([...proofs].sort());
  });

  test.each(Object.entries(proved))("%s ends the search at once", (cause, [answers, endsWith]) => {
    const session = follow(start("TR-01"), { ...healthy, ...answers });
    const rule = flow.causes[cause];
    expect(memoryOf(session).cause).toBe(cause);
    expect(metaOf(session).outcome).toBe(rule?.remedy === "part" ? "part" : "professional");
    expect(rule?.remedy === "part" ? rule.part : memoryOf(session).who).toBe(endsWith);
  });
});

describe("a cause that a person puts right", () => {
  test("has a written path here, every one of them", () => {
    const listed = Object.values(flow.scenarios["no-ice-plumbed"]?.checks ?? []).flatMap(({ check }) =>
      Object.values(flow.checks[check]?.turns ?? {}).flatMap(({ answers, verdicts }) =>
        Object.values({ ...answers, ...verdicts }).flatMap(({ remedies }) => remedies ?? []),
      ),
    );
    expect(Object.keys(putRight).sort()).toEqual([...new Set(listed)].sort());
  });

  test.each(Object.entries(putRight))(
    "%s ends as fixed, and owed to it, when ice comes back",
    (cause, answers) => {
      const dry = cause === "controls-stalled" ? {} : { "reset.find": "cannot" };
      const onTheWater = { "reset.test": "moved-dry" };
      const water = ["stop-tap", "supply-line", "filter", "fill-tube", "inlet-valve"];
      const reset = water.includes(flow.causes[cause]?.station ?? "") ? onTheWater : dry;
      const came: Answers = { "wait-for-ice.wait": "ice-came" };
      // Without the freezer's temperature and a test run nothing is proved, so that the wait comes first.
      const unread: Answers = { "freezer-temperature.read": "cannot" };
      const session = follow(start(), { ...healthy, ...unread, ...reset, ...came, ...answers });
      expect(metaOf(session).outcome).toBe("fixed");
      expect(memoryOf(session).cause).toBe(cause);
    },
  );
});

describe("the search", () => {
  test("offers the wait right after an ice maker that was off, before a dozen more questions", () => {
    const answers = { ...healthy, ...putRight["switched-off"] };
    const session = follow(start(), answers, "wait-for-ice.wait");
    expect(Object.keys(memoryOf(session).findings)).toHaveLength(8);
  });

  test("goes to the water first when the test cycle ran dry, whatever was put right before", () => {
    const answers = { ...healthy, ...putRight["bin-full"], "reset.test": "moved-dry" };
    const session = follow(start(), answers, "filter-age.fitted");
    expect(memoryOf(session).findings["wait-for-ice.wait"]).toBeUndefined();
  });

  test("looks at the filter's seat early when the filter is new", () => {
    const answers = { ...healthy, ...afterChange, "opening.changed": "new-filter" };
    const session = follow(start(), answers, "fill-tube.gate-plug-out");
    expect(memoryOf(session).findings["filter-seated.look"]?.answer).toBe("seated");
    expect(memoryOf(session).findings["stop-tap.open"]).toBeUndefined();
  });

  test("opens the panel for too little water only once the way up to the valve was followed", () => {
    const answers = { ...healthy, ...lowFlow, ...noPlug };
    const session = follow(start(), answers, "inlet-valve.gate-water-supply");
    expect(memoryOf(session).done).toEqual(
      expect.arrayContaining(["tap-fill", "stop-tap", "supply-line", "filter-seated", "flow-without-filter"]),
    );
    const blind = { ...answers, "supply-line.gate-water-supply": "cannot" };
    const { findings } = memoryOf(follow(start(), blind));
    expect(Object.keys(findings).filter((turn) => turn.includes("back-panel"))).toEqual([]);
  });

  test("sells an old filter as due, and no more, where nobody could look behind the machine", () => {
    const answers = {
      ...healthy,
      ...lowFlow,
      ...noPlug,
      "filter-age.fitted": fittedOn("2025-01-01"),
      "supply-line.gate-water-supply": "cannot",
    };
    expect(memoryOf(follow(start("TR-01"), answers)).cause).toBe("filter-due");
    const unknown = { ...answers, "filter-age.fitted": "not-sure" };
    expect(memoryOf(follow(start("TR-01"), unknown)).cause).toBe("filter-due");
    const young = { ...answers, "filter-age.fitted": fittedOn("2026-02-01") };
    expect(memoryOf(follow(start("TR-01"), young)).cause).not.toBe("filter-due");
  });

  test("sells no ice maker while nobody knows whether it is cold where the ice is made", () => {
    const answers = { ...healthy, ...nothingFound, "reset.test": "nothing-moved" };
    const unread = { ...answers, "ice-place-cold.read": "not-sure" };
    expect(memoryOf(follow(start("TR-01"), answers)).cause).toBe("ice-maker-faulty");
    const session = follow(start("TR-01"), unread);
    expect([metaOf(session).outcome, memoryOf(session).cause]).toEqual([
      "professional",
      "ice-maker-in-doubt",
    ]);
  });

  test("takes a reading too close to its limit for neither good nor bad", () => {
    const tooClose = { "ice-place-cold.read": iceCelsius(-15), "reset.test": "nothing-moved" };
    const session = follow(start("TR-01"), { ...healthy, ...nothingFound, ...tooClose });
    expect(memoryOf(session).findings["ice-place-cold.read"]?.answer).toBe("unclear");
    expect(metaOf(session).outcome).toBe("professional");
  });

  test("trusts the later of two flow tests", () => {
    const again = { ...lowFlow, "stop-tap.open": "opened", "flow-again.run": flowOf(5), ...withPlug };
    const session = follow(start("TR-01"), {
      ...healthy,
      ...again,
      "wait-for-ice.wait": "keep-checking",
      "flow-without-filter.run": flowOf(25),
    });
    expect(memoryOf(session).cause).toBe("filter-clogged");
    const better = { ...again, "flow-again.run": flowOf(25), "last-wait.wait": "cannot" };
    const wait = { "wait-for-ice.wait": "keep-checking" };
    expect(memoryOf(follow(start(), { ...healthy, ...nothingFound, ...better, ...wait })).cause).toBeNull();
  });

  test("reads the freezer again only after a wait that followed the colder setting", () => {
    const waited = { "wait-for-ice.wait": runsOut, "wait-for-ice.came": "no-ice" };
    const tooWarm = { "freezer-temperature.read": celsius(-5), "freezer-temperature.colder": "set-colder" };
    let session = follow(
      start(),
      { ...healthy, ...putRight["switched-off"], ...waited },
      "door-closing.look",
    );
    const onward = { ...healthy, ...tooWarm, "wait-for-ice.wait": "keep-checking" };
    session = follow(session, onward, "filter-age.fitted");
    expect(memoryOf(session).findings["freezer-again.read"]).toBeUndefined();
  });

  test("takes a freezer that is too warm at its coldest setting for a fault only with nothing else to blame", () => {
    const coldest = {
      "freezer-temperature.read": celsius(-5),
      "freezer-temperature.colder": "already-coldest",
    };
    expect(memoryOf(follow(start(), { ...healthy, ...coldest })).cause).toBe("cooling-fault");
    const packed = { "too-full.look": "packed", "too-full.rearrange": "cannot" };
    expect(
      memoryOf(follow(start(), { ...healthy, ...coldest, ...packed, ...nothingFound })).cause,
    ).toBeNull();
  });

  test("does not sell a filter for a cartridge that sat loose and was not put right", () => {
    const loose = { "filter-seated.look": "loose", "filter-seated.reseat": "cannot" };
    const answers = { ...healthy, ...lowFlow, ...withPlug, ...loose, "flow-without-filter.run": flowOf(25) };
    const unable = { "inlet-valve.gate-water-supply": "cannot" };
    expect(memoryOf(follow(start("TR-01"), { ...answers, ...unable })).cause).toBeNull();
  });

  test("sends a person who can do nothing at all to a professional, without a cause", () => {
    let session = follow(start(), healthy, "control-lock.look");
    const unable: Answers = {};
    for (const { meta } of graphOf(composeChart(flow)).leaves.values())
      if (meta?.check) unable[meta.turn] = "cannot";
    session = follow(session, unable);
    expect([metaOf(session).outcome, memoryOf(session).cause]).toEqual(["professional", null]);
    expect(memoryOf(session).who).toBe("appliance-engineer");
  });
});

describe("the opening", () => {
  const stopsAt = (answers: Answers) => {
    const session = follow(start(), { ...healthy, ...answers }, "opening.symptom");
    return metaOf(session).outcome === "stopped" ? memoryOf(session).danger : metaOf(session).turn;
  };

  test.each(["burning", "sparks", "water-near-socket", "gas", "shock"])("stops at once at %s", (danger) => {
    expect(stopsAt({ "opening.danger": danger })).toBe(danger);
  });

  // A valve that fills hisses too, so a hiss alone is no danger that was stated.
  test("asks once more about a hiss, and stops unless it comes and goes", () => {
    const hiss = (answer: string) => stopsAt({ "opening.danger": "hiss", "opening.hiss": answer });
    expect(hiss("comes-and-goes")).toBe("opening.symptom");
    expect(hiss("gas")).toBe("gas");
    expect(hiss("not-sure")).toBe("not-sure");
  });

  test("asks who is not sure once more in plain words, and stops unless there is nothing of it", () => {
    const unsure = (answer: string) =>
      stopsAt({ "opening.danger": "not-sure", "opening.danger-again": answer });
    expect(unsure("nothing-of-it")).toBe("opening.symptom");
    expect(unsure("general")).toBe("general");
    expect(unsure("not-sure")).toBe("not-sure");
  });
});

describe("the ending with a part", () => {
  const answers = { ...healthy, "reset.test": "nothing-moved" };

  test("asks for the model code when the shop's page gave none", () => {
    const session = follow(start(), answers, "part.model");
    expect(metaOf(session).turn).toBe("part.model");
  });

  test("asks for no model code when the shop's page gave one", () => {
    expect(metaOf(follow(start("TR-01"), answers)).turn).toBe("part.card");
  });
});

test("every turn takes 'not sure' or 'can't', or an answer that is always true", () => {
  const { leaves, edges } = graphOf(composeChart(flow));
  const shut = [...leaves].flatMap(([leaf, { meta }]) => {
    const events = edges.filter(({ from }) => from === leaf).map(({ event }) => event);
    const declined = events.some((event) => event === "answered.not-sure" || event === "answered.cannot");
    return !meta || meta.kind === "ending" || declined ? [] : [meta.turn];
  });
  // "I'll go on checking" is always open to who waits for ice, and "I can't find it" to who looks for the code.
  expect([...new Set(shut)].sort()).toEqual(["part.model", "wait-for-ice.wait"]);
});
