import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { readLocales } from "../../src/cli/locales-folder.ts";
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

describe("a text in the trimmed script", () => {
  test.each(Object.keys(locales))("of %s reads as in the whole library, whatever its key", (language) => {
    const [texts, own] = [createTexts, trimmed.createTexts].map((one) => one(locales, language, flow.limits));
    const keys = keysOf(locales["en-GB"] ?? {});
    expect(keys.length).toBeGreaterThan(500);
    for (const key of [...keys, ...keys.map((key) => key.replace(/\.[^.]+$/, "")), "no.such.text"])
      expect(own?.(key)).toBe(texts?.(key));
    for (const key of keys)
      for (const count of [0, 1, 2, 1.5])
        expect(own?.(key.replace(/_(one|other)$/, ""), { count })).toBe(
          texts?.(key.replace(/_(one|other)$/, ""), { count }),
        );
  });

  // What a translator may come to use, though no text of ours does so yet. Arabic has six plural forms (Unicode CLDR).
  test("may nest, format, count in six forms, and look different in a context", () => {
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
      },
      "en-GB": { fallback: "Only here: {{name}}" },
    };
    const [texts, own] = [createTexts, trimmed.createTexts].map((one) => one(rich, "ar", flow.limits));
    const name = "<b>$t(tray) & {{value}}</b>";
    for (const values of [0, 1, 2, 3, 11, 100].map((count) => ({ count, name, value: 1234.5 })))
      for (const key of ["cubes", "nested", "number", "fallback"])
        expect(own?.(key, values)).toBe(texts?.(key, values));
    expect(own?.("tray", { context: "grey" })).toBe("grey tray");
    expect(own?.("nested", { name: "Jo" })).toBe("The tray of Jo, 2:2");
  });
});

function keysOf(resource: Resource, prefix = ""): string[] {
  return Object.entries(resource).flatMap(([id, text]) =>
    typeof text === "string" ? [prefix + id] : keysOf(text, `${prefix}${id}.`),
  );
}
