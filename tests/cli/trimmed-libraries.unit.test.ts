import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { readLocales } from "../../src/cli/locales-folder.ts";
import { composeChart, type StateConfig } from "../../src/flow/index.ts";
import { createTexts, type LogEvent, type Resource, startSession, viewOf } from "../../src/session/index.ts";
import { at, inTradeOrder } from "../session/drive.ts";
import { diceOf, isOver, standOf, wander } from "../session/walker.ts";
import { buildTrimmed } from "./trimmed/build.ts";

/*
 * The libraries as published are what the trimmed ones are measured by: whatever a person does, and whatever a text
 * asks for, both must give the same.
 */
const flow = readFlow();
const locales = readLocales();
let trimmed: Awaited<ReturnType<typeof buildTrimmed>>;

beforeAll(async () => {
  trimmed = await buildTrimmed();
}, 60_000);

describe("a chart in the trimmed script", () => {
  test("takes 60 people who answer anything where the whole library takes them", () => {
    const charts = inTradeOrder(flow);
    const own = trimmed.createCharts(flow, trimmed.createListAdviser(flow));
    const [texts, ownTexts] = [createTexts, trimmed.createTexts].map((one) =>
      one(locales, "en-US", flow.limits),
    );
    const numbers = fc.array(fc.nat(0xffff), { minLength: 200, maxLength: 300, size: "max" });
    const endings = new Set<string>();
    for (const throws of fc.sample(numbers, { seed: 7, numRuns: 60 })) {
      const dice = diceOf(throws);
      let session = startSession(flow, at(0), dice(2) ? "TR-01" : null, charts);
      let minutes = 0;
      for (let step = 0; step < 60 && !isOver(session); step++) {
        minutes += dice(20) ? dice(10) : dice(3000);
        session = wander(session, minutes, dice, true).session;
      }
      let replayed = trimmed.startSession(flow, at(0), session.log.model, own);
      for (const event of session.log.events) {
        const { session: next, refusal } = trimmed.record(replayed, event);
        expect([event, refusal]).toEqual([event, null]);
        replayed = next;
      }
      expect(standOf(replayed)).toBe(standOf(session));
      const now = at(minutes);
      expect(trimmed.viewOf(replayed, ownTexts as never, now, [])).toEqual(
        viewOf(session, texts as never, now, []),
      );
      if (isOver(session)) endings.add(String(session.snapshot.value));
    }
    // They came to more than one end, else this would prove little.
    expect(endings.size).toBeGreaterThan(2);
  });

  test("holds nothing but what the trimmed library still knows", () => {
    const states = statesOf(composeChart(flow) as StateConfig);
    const ways = states.flatMap(({ on = {}, always = [] }) => [...Object.values(on), always].flat());
    expect(ways.length).toBeGreaterThan(500);
    const keysOf = (each: object[]) => [...new Set(each.flatMap(Object.keys))];
    expect(["id", "initial", "states", "always", "on", "meta"]).toEqual(
      expect.arrayContaining(keysOf(states)),
    );
    expect(["target", "guard", "actions", "reenter"]).toEqual(expect.arrayContaining(keysOf(ways)));
    expect(ways.filter(({ target }) => !/^#[^.]+$/.test(target))).toEqual([]);
    expect(keysOf(states.map(({ on = {} }) => on)).filter((event) => event.includes("*"))).toEqual([]);
  });

  test("refuses what the whole library refuses", () => {
    const session = trimmed.startSession(flow, at(0), null, trimmed.createCharts(flow));
    const events: LogEvent[] = [
      { type: "wait-ended", at: at(1) },
      { type: "ice-returned", at: at(1) },
      { type: "answered", turn: "opening.danger", answer: "nonsense", at: at(1) },
      { type: "answered", turn: "elsewhere.look", answer: "none", at: at(1) },
    ];
    expect(events.map((event) => trimmed.record(session, event).refusal)).toEqual([
      ...["not-now", "not-now", "unknown-answer", "other-turn"],
    ]);
  });
});

/** A state with all that are in it. */
const statesOf = (state: StateConfig): StateConfig[] => [
  state,
  ...Object.values(state.states ?? {}).flatMap(statesOf),
];

describe("a text in the trimmed script", () => {
  test.each(Object.keys(locales))("of %s reads as in the whole library, whatever its key", (language) => {
    const [texts, own] = [createTexts, trimmed.createTexts].map((one) => one(locales, language, flow.limits));
    const keys = keysOf(locales["en-GB"] ?? {});
    expect(keys.length).toBeGreaterThan(500);
    for (const key of [...keys, ...keys.map((key) => key.replace(/\.[^.]+$/, "")), "no.such.text"])
      expect(own?.(key)).toBe(texts?.(key));
    for (const key of keys) {
      // A value by a name that means something to the library itself would be seen here.
      const names = [...(texts?.(key) ?? "").matchAll(/{{([^},]+)}}/g)].map(([, name]) => name);
      const values = Object.fromEntries(names.map((name) => [name, `<b>${name}</b> $t(ui.back) {{count}}`]));
      const base = key.replace(/_(one|other)$/, "");
      for (const count of [0, 1, 2, 1.5])
        expect(own?.(base, { ...values, count })).toBe(texts?.(base, { ...values, count }));
    }
  });

  // What a translator may come to use, though no text of ours does so yet. Arabic has six plural forms (Unicode CLDR).
  test("may nest, format, count in six forms or by order, and look different in a context", () => {
    const rich: Record<string, Resource> = {
      ar: {
        cubes_zero: "0:{{count}}",
        cubes_one: "1:{{count}}",
        cubes_two: "2:{{count}}",
        cubes_few: "3:{{count}}",
        cubes_many: "m:{{count}}",
        cubes_other: "o:{{count}}",
        tray: "tray",
        tray_grey: "grey tray",
        nested: 'The $t(tray) of {{name}}, $t(cubes, {"count": 2})',
        number: "{{value, number(minimumFractionDigits: 2)}} and {{- name}} and {{lost}}",
        formats: "{{value, currency(GBP)}} {{value, relativetime(hour)}} {{day, datetime(year: numeric)}}",
        turn_ordinal_other: "turn {{count}}",
        ordinal: '$t(turn, {"count": {{count}}, "ordinal": true}) $t(no.such) $t(formats, none)',
      },
      "en-GB": { fallback: "Only here: {{name}}" },
    };
    const [texts, own] = [createTexts, trimmed.createTexts].map((one) => one(rich, "ar", flow.limits));
    const name = "<b>$t(tray) & {{value}}</b>";
    const more = { name, value: 1234.5, day: Date.UTC(2026, 10, 25) };
    for (const values of [0, 1, 2, 3, 11, 100].map((count) => ({ ...more, count })))
      for (const key of ["cubes", "nested", "number", "fallback", "formats", "ordinal", "turn"])
        expect(own?.(key, values)).toBe(texts?.(key, values));
    expect(own?.("tray", { context: "grey" })).toBe("grey tray");
    expect(own?.("nested", { name: "Jo" })).toBe("The tray of Jo, 2:2");
    expect(own?.("ordinal", { count: 3 })).toMatch(/^turn 3 /);
  });
});

function keysOf(resource: Resource, prefix = ""): string[] {
  return Object.entries(resource).flatMap(([id, text]) =>
    typeof text === "string" ? [prefix + id] : keysOf(text, `${prefix}${id}.`),
  );
}
