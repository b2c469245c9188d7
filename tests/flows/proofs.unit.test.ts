import { describe, expect, test } from "vitest";
import type { Condition } from "../../src/condition/index.ts";
import type { Flow } from "../../src/guide/index.ts";
import { type Reading, verdictOn } from "../../src/instruments/index.ts";
import { type Literal, waysToHold } from "../../src/workbench/verify/ways-to-hold.ts";
import { ownFlow } from "../own-flow.ts";
import { celsius, iceCelsius, kilopascals, litresPerMinute } from "../session/drive.ts";

const flow = ownFlow;

/** A finding, or a cause put right, that every way to a proof has to contain one of. */
type Needed = { name: string; by: (Condition & object)[] };

const answered = (turn: string, ...is: string[]): Needed["by"][number] => ({ answered: { turn, is } });
const verdict = (turn: string, ...is: string[]): Needed["by"][number] => ({ verdict: { turn, is } });
const remedied = (cause: string): Needed["by"][number] => ({ remedied: [cause] });

/** True where a statement of a way says no less than the one that is needed. */
function says({ holds, of }: Literal, needed: Needed["by"][number]): boolean {
  if (!holds) return false;
  const [[type, asked]] = Object.entries(needed) as [[string, unknown]];
  if (of.type !== type) return false;
  if (type === "remedied")
    return (of.params as { causes: string[] }).causes.every((one) => (asked as string[]).includes(one));
  const { turn, is } = of.params as { turn: string; is: string[] };
  const want = asked as { turn: string; is: string[] };
  return turn === want.turn && is.every((one) => want.is.includes(one));
}

/** What is needed and some way to prove the cause does without. */
function missing({ causes, conditions }: Flow, cause: string, needed: Needed[]): string[] {
  const proof = causes[cause]?.proof;
  const ways = proof ? waysToHold(proof, conditions) : [[]];
  return needed.flatMap(({ name, by }) =>
    ways.every((way) => way.some((one) => by.some((need) => says(one, need)))) ? [] : [name],
  );
}

/** The flow with another proof for one cause. */
const proving = (cause: string, proof: Condition): Flow => {
  const rule = flow.causes[cause];
  if (!rule) throw new Error(`There is no cause "${cause}"`);
  return { ...flow, causes: { ...flow.causes, [cause]: { ...rule, proof } } };
};

/** The flow with each line of a proof left out in turn. */
function withoutEachLine(cause: string): Flow[] {
  const proof = flow.causes[cause]?.proof as { all: Condition[] };
  return proof.all.map((left) => proving(cause, { all: proof.all.filter((one) => one !== left) }));
}

const seen: Record<string, Needed[]> = {
  "ice-maker-faulty": [
    { name: "a first run", by: [answered("reset.test", "nothing-moved")] },
    { name: "the plug out and back", by: [answered("reset.unplug", "was-out")] },
    { name: "the button held for the full time", by: [answered("reset.hold-again", "held")] },
    { name: "a second run", by: [answered("reset.test-again", "nothing-again")] },
    { name: "cold where the ice is made", by: [verdict("ice-place-cold.read", "passes")] },
    {
      name: "special modes",
      by: [answered("cooling-settings.look", "usual", "too-mild"), remedied("setting-wrong")],
    },
    {
      name: "the control lock",
      by: [answered("control-lock.look", "lock-off", "no-lock"), remedied("control-locked")],
    },
    { name: "the switch", by: [answered("ice-maker-switch.look", "on"), remedied("switched-off")] },
    { name: "stuck ice", by: [answered("ice-under-maker.look", "clear"), remedied("ice-jammed")] },
    {
      name: "the bin",
      by: [answered("ice-bin.look", "fine", "full", "clumped", "not-seated", "sensor-blocked")],
    },
  ],
  "pump-faulty": [
    {
      name: "the light",
      by: [answered("add-water-light.look", "dark"), answered("add-water-light.magnet", "there", "no-float")],
    },
    {
      name: "a dry run",
      by: [answered("reset.test", "moved-dry"), answered("reset.test-again", "moved-dry")],
    },
    { name: "a second silent run", by: [answered("pump-run.again", "silent-again")] },
  ],
  "defrost-fault": [
    { name: "a full thaw that held for a while", by: [answered("full-thaw.before", "came-back")] },
    { name: "the door", by: [answered("door-closing.look", "closes")] },
    {
      name: "the seal",
      by: [answered("door-seal.feel", "no-draught"), verdict("door-seal.paper-strip", "passes")],
    },
  ],
  "fill-tube-faulty": [
    { name: "a tube that froze again", by: [answered("fill-tube-again.look", "frozen-again")] },
    { name: "no drip", by: [answered("fill-drip.look", "dry")] },
    { name: "a good flow", by: [verdict("flow-test.run", "passes"), verdict("flow-again.run", "passes")] },
  ],
  "supply-weak": [
    { name: "a low flow", by: [verdict("flow-test.run", "fails"), verdict("flow-again.run", "fails")] },
    { name: "the small tap", by: [answered("stop-tap.open", "was-open", "opened")] },
    { name: "the tube", by: [answered("supply-line.look", "sound", "kinked")] },
    { name: "the filter's seat", by: [answered("filter-seated.look", "seated", "loose", "backwards")] },
  ],
};

describe.each(Object.entries(seen))("no way to prove %s", (cause, needed) => {
  test("does without anything that has to be seen first", () => {
    expect(missing(flow, cause, needed)).toEqual([]);
  });

  test("would lack it unnoticed: each line left out of the proof is missed", () => {
    const missed = withoutEachLine(cause).flatMap((planted) => missing(planted, cause, needed));
    expect([...new Set(missed)].sort()).toEqual(needed.map(({ name }) => name).sort());
  });
});

describe("the house supply", () => {
  // 9 l/min is a reference at the boundary; sound kitchen taps give 5 to 8, in the US 8.3 at most by law.
  test.each([4.5, 5, 6, 8.3, 8.9])("of %d l/min at a tap says nothing", (value) => {
    expect(verdictOn(litresPerMinute(value), flow.limits, "2026-03-02T08:00:00Z")).toBe("unclear");
  });

  test("is weak below 4 l/min, and strong well above 9", () => {
    const at = "2026-03-02T08:00:00Z";
    expect(verdictOn(litresPerMinute(3.5), flow.limits, at)).toBe("fails");
    expect(verdictOn(litresPerMinute(10), flow.limits, at)).toBe("passes");
  });

  test("that is neither proves nothing: no proof of a weak one rests on it", () => {
    const rests = (proof: Condition) =>
      waysToHold(proof, flow.conditions)
        .flat()
        .some(
          ({ of }) =>
            of.type === "verdict" && of.params.turn === "tap-fill.fill" && of.params.is.includes("unclear"),
        );
    expect(rests(flow.causes["supply-weak"]?.proof as Condition)).toBe(false);
    expect(rests({ verdict: { turn: "tap-fill.fill", is: ["fails", "unclear"] } })).toBe(true);
  });

  test("of 700 kPa is no fault of the house: most machines take 830", () => {
    expect(verdictOn(kilopascals(700), flow.limits, "2026-03-02T08:00:00Z")).toBe("passes");
  });
});

test("no display shows how cold it is where the ice is made", () => {
  const shown: Reading = { kind: "temperature", value: -18, unit: "C", with: "display", place: "ice-maker" };
  const at = "2026-03-02T08:00:00Z";
  expect(verdictOn(shown, flow.limits, at)).toBe("unclear");
  expect(verdictOn(iceCelsius(-18), flow.limits, at)).toBe("passes");
  expect(verdictOn(celsius(-13), flow.limits, at)).toBe("fails");
});

describe("who is called", () => {
  const called = (who: string) =>
    Object.entries(flow.causes).flatMap(([id, rule]) => (rule.who === who ? [id] : []));

  test("for the sealed circuit alone is a refrigeration engineer", () => {
    expect(called("refrigeration-engineer")).toEqual(["sealed-circuit-fault"]);
    expect(Object.values(flow.scenarios).map(({ otherwise }) => otherwise.who)).not.toContain(
      "refrigeration-engineer",
    );
    expect(called("appliance-engineer")).toEqual(
      expect.arrayContaining(["fan-fault", "defrost-fault", "cooling-fault"]),
    );
  });
});

test("every kind of part is what some cause ends with", () => {
  const sold = new Set(Object.values(flow.causes).map(({ part }) => part));
  const unsold = (kinds: string[]) => kinds.filter((kind) => !sold.has(kind));
  expect(unsold(Object.keys(flow.parts))).toEqual([]);
  expect(unsold(["door-hinge"])).toEqual(["door-hinge"]);
});

describe("white bits in the ice", () => {
  const { turns } = flow.checks["ice-look"] as Flow["checks"][string];

  test("count as harmless only when they dissolved, or there were none", () => {
    const into = Object.entries(turns).flatMap(([turn, { answers = {}, "not-sure": unsure, cannot }]) =>
      Object.entries({ ...answers, "not-sure": unsure, cannot }).flatMap(([answer, outcome]) =>
        outcome && outcome.to === "harmless" ? [`${turn}.${answer}`] : [],
      ),
    );
    expect(into).toEqual(["vinegar.dissolve", "vinegar.no-bits"]);
  });

  test("that may be the tray's coating end with somebody to look at it", () => {
    expect(turns.vinegar?.answers?.flakes).toMatchObject({ to: "professional", finds: "coating-flakes" });
  });
});

test("kinked copper is replaced, and nobody is asked to bend it back", () => {
  const { answers = {} } = flow.checks["supply-line"]?.turns.look ?? {};
  expect(answers["copper-kinked"]).toMatchObject({ to: "done", finds: "line-still-kinked" });
});

describe("limits that lean on each other", () => {
  const of = (id: string) => flow.limits[id]?.value ?? Number.NaN;

  test("call no sound cube small, and no sound tank-fed tray's day too little", () => {
    expect(of("piece-small")).toBeLessThan(of("piece-least"));
    expect(of("ice-day-low")).toBeLessThanOrEqual(0.3);
    expect(of("ice-day-enough")).toBeGreaterThan(of("ice-day-low"));
  });

  test("pass a freezer that is warmer than what is advised, but not by much", () => {
    expect(of("freezer-target")).toBe(-18);
    expect(of("freezer-for-ice")).toBe(-15);
  });

  test("give ice behind a liner a whole day to melt", () => {
    expect([of("thaw-hours-least"), of("thaw-hours"), of("full-thaw-hours")]).toEqual([8, 24, 24]);
  });
});

test("no test run is asked for before the switch, the bin and stuck ice were seen to, wherever there is one", () => {
  const needs = ["ice-maker-switch", "ice-bin", "ice-under-maker"];
  const early = ({ scenarios, conditions }: Flow) =>
    Object.entries(scenarios).flatMap(([id, { checks }]) =>
      checks.flatMap(({ check, when }) => {
        if (check !== "reset") return [];
        const ways = when ? waysToHold(when, conditions) : [[]];
        const isDone = (way: Literal[], one: string) =>
          way.some(({ holds, of }) => holds && of.type === "done" && of.params.check === one);
        return ways.every((way) => needs.every((one) => isDone(way, one))) ? [] : [id];
      }),
    );
  expect(early(flow)).toEqual([]);
  const planted = structuredClone(flow);
  for (const used of planted.scenarios["no-ice-plumbed"]?.checks ?? [])
    if (used.check === "reset") used.when = { all: [{ done: "ice-bin" }, { done: "ice-under-maker" }] };
  expect(early(planted)).toEqual(["no-ice-plumbed"]);
});

test("a filter is not sold as due where new cubes are full: the water for them came through it", () => {
  const ways = waysToHold(flow.causes["filter-due"]?.proof as Condition, flow.conditions);
  const rulesOut = (way: Literal[]) =>
    way.some(({ holds, of }) => !holds && of.type === "answered" && of.params.turn === "fresh-ice.look");
  expect(ways.length).toBeGreaterThan(0);
  expect(ways.filter((way) => !rulesOut(way))).toEqual([]);
});

describe("what nobody asked about once", () => {
  const asks = (check: string) =>
    Object.entries(flow.scenarios).flatMap(([id, { checks }]) =>
      checks.some((used) => used.check === check) ? [id] : [],
    );

  test("the room's warmth is asked wherever cold may be lacking, and needs no tool", () => {
    expect(asks("room-warmth").sort()).toEqual([
      "after-change",
      "clumped",
      "no-ice-plumbed",
      "no-ice-tank",
      "too-little",
      "too-warm",
    ]);
    expect(flow.checks["room-warmth"]?.tools).toEqual([]);
    expect([flow.limits["room-coldest"]?.value, flow.limits["room-hottest"]?.value]).toEqual([10, 35]);
  });

  test("a fan that makes no sound is felt for, and counts only while the motor runs and no mode is on", () => {
    expect(asks("fan-air")).toEqual(["too-warm"]);
    const ways = waysToHold(flow.causes["fan-fault"]?.proof as Condition, flow.conditions);
    const silent = ways.filter((way) => way.some(({ of }) => JSON.stringify(of).includes("fan-air.later")));
    expect(silent.length).toBeGreaterThan(0);
    for (const way of silent)
      expect(way.filter(({ of }) => JSON.stringify(of).includes("cooling-runs.listen"))).toHaveLength(1);
  });

  test("frost around an ice maker in the fridge counts once door and seal were seen", () => {
    expect(asks("ice-compartment").sort()).toEqual(["clumped", "no-ice-plumbed", "too-little"]);
    expect(
      missing(flow, "ice-compartment-iced", [
        { name: "the frost", by: [answered("ice-compartment.look", "frosted")] },
      ]),
    ).toEqual([]);
  });

  test("a filter that the machine refuses is the cause only where too little water comes", () => {
    const needed = [
      { name: "the kind", by: [answered("filter-kind.look", "other-kind", "refused")] },
      { name: "a low flow", by: [verdict("flow-test.run", "fails"), verdict("flow-again.run", "fails")] },
    ];
    expect(missing(flow, "filter-refused", needed)).toEqual([]);
    expect(
      missing(proving("filter-refused", { done: "filter-kind" }), "filter-refused", needed),
    ).toHaveLength(2);
  });
});

test("a freezer just set colder, or just out of a special mode, is measured only after a day", () => {
  const ways = waysToHold({ is: "cold-as-found" }, flow.conditions);
  const untouched = ways.filter((way) => way.some(({ holds, of }) => !holds && of.type === "remedied"));
  expect(untouched.flatMap((way) => way.map(({ of }) => of.params))).toEqual([
    { causes: ["freezer-warm", "setting-wrong", "no-power"] },
  ]);
  const unguarded = Object.entries(flow.scenarios).flatMap(([id, { checks }]) =>
    checks.some(
      ({ check, when }) =>
        check === "freezer-temperature" && !JSON.stringify(when)?.includes("cold-as-found"),
    )
      ? [id]
      : [],
  );
  expect(unguarded).toEqual([]);
});
