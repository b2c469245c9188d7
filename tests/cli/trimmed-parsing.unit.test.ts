import { readFileSync } from "node:fs";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import * as z from "zod/mini";
import { parseCatalogue } from "../../src/catalogue/index.ts";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { readLocales } from "../../src/cli/locales-folder.ts";
import { createPanelData } from "../../src/cli/panel-data.ts";
import { fetchShopFlows } from "../../src/embed/shop-flows.ts";
import { type Log, parseEvent, parseLog, startSession } from "../../src/session/index.ts";
import { at, inTradeOrder } from "../session/drive.ts";
import { diceOf, isOver, wander } from "../session/walker.ts";
import { buildTrimmed } from "./trimmed/build.ts";
import { fitting, shapesOf } from "./trimmed/shapes.ts";
import { spoiltFrom } from "./trimmed/spoil.ts";

/* The library as published is what the trimmed one is measured by: what fits, what is refused, and where. */
const flow = readFlow();
let trimmed: Awaited<ReturnType<typeof buildTrimmed>>;

beforeAll(async () => {
  trimmed = await buildTrimmed();
}, 60_000);

/** Logs of people who answer anything. */
function walkedLogs(): Log[] {
  const charts = inTradeOrder(flow);
  const numbers = fc.array(fc.nat(0xffff), { minLength: 200, maxLength: 300, size: "max" });
  return fc.sample(numbers, { seed: 11, numRuns: 60 }).map((throws) => {
    const dice = diceOf(throws);
    let session = startSession(flow, at(0), dice(2) ? "TR-01" : null, charts);
    for (let step = 0; step < 40 && !isOver(session); step++)
      session = wander(session, step * 5, dice, false).session;
    return session.log;
  });
}

/** Runs `compare` on spoilt samples; it says whether the sample was taken whole. Both must happen, often. */
async function spoil<T>(
  samples: T[],
  compare: (value: unknown) => boolean | Promise<boolean>,
  numRuns: number,
) {
  const taken = { true: 0, false: 0 };
  const given = fc.asyncProperty(spoiltFrom(samples), async (value) => {
    taken[`${await compare(value)}`]++;
  });
  await fc.assert(given, { seed: 3, numRuns });
  expect(Math.min(taken.true, taken.false)).toBeGreaterThan(numRuns / 10);
}

describe("in the trimmed script", () => {
  test("a log is taken, cleaned or refused as by the whole library", async () => {
    const logs = walkedLogs();
    expect(new Set(logs.flatMap((log) => log.events.map(({ type }) => type))).size).toBeGreaterThan(4);
    for (const log of logs) expect(trimmed.parseLog(log)).toEqual(log);
    await spoil(
      logs,
      (value) => {
        const log = parseLog(value);
        expect(trimmed.parseLog(value)).toStrictEqual(log);
        return log !== null;
      },
      4000,
    );
  });

  test("an event is taken, cleaned or refused as by the whole library", async () => {
    const events = walkedLogs().flatMap((log) => log.events);
    const readings = events.flatMap((event) => (event.type === "measured" ? [event.reading.kind] : []));
    const turns = Object.values(flow.checks).flatMap((check) => Object.values(check.turns));
    const instruments = new Set(turns.flatMap(({ instrument }) => instrument ?? []));
    expect([...new Set<string>(readings)].sort()).toEqual([...instruments].sort());
    await spoil(
      events,
      (value) => {
        const event = parseEvent(value);
        expect(trimmed.parseEvent(value)).toStrictEqual(event);
        return event !== null;
      },
      8000,
    );
  });

  test("a catalogue keeps the same rows and reports the same places", async () => {
    const feed = JSON.parse(readFileSync(new URL("../../demo/catalogue.json", import.meta.url), "utf8"));
    const whole = parseCatalogue(feed);
    expect(trimmed.parseCatalogue(feed)).toStrictEqual(whole);
    const extract = { ...feed, models: feed.models.slice(0, 3), parts: feed.parts.slice(0, 4) };
    const places = new Set<string>();
    await spoil(
      [extract],
      (value) => {
        const parsed = parseCatalogue(value);
        expect(trimmed.parseCatalogue(value)).toStrictEqual(parsed);
        for (const { code, path } of parsed.problems) if (code === "bad-row") places.add(path);
        return parsed.catalogue.parts.length === extract.parts.length;
      },
      1500,
    );
    expect([...places]).toEqual(expect.arrayContaining(["parts.1", "parts.0.price.minor", "models.2.brand"]));
  });

  test("a shop's flows are taken or refused in the same words", async () => {
    const packed = createPanelData(flow, readLocales())["en-GB"];
    await spoil(
      [packed],
      async (value) => {
        const get = async () => new Response(JSON.stringify(value ?? null));
        const [own, whole] = await Promise.all(
          [trimmed.fetchShopFlows, fetchShopFlows].map((fetchFlows) =>
            fetchFlows("https://shop.example/flows", "en-GB", flow, get).catch(String),
          ),
        );
        expect(own).toStrictEqual(whole);
        return typeof whole !== "string";
      },
      30,
    );
  });

  test.each(Object.entries(shapesOf(z)))(
    "a shape is taken or refused at the same places: %s",
    (name, whole) => {
      const own: z.ZodMiniType | undefined = Object.entries(shapesOf(trimmed.z)).find(
        ([each]) => each === name,
      )?.[1];
      const look = (shape: z.ZodMiniType | undefined, value: unknown) => {
        const parsed = shape?.safeParse(value);
        return parsed?.success
          ? { taken: parsed.data }
          : { at: parsed?.error.issues.map(({ path }) => path) };
      };
      const given = fc.property(spoiltFrom(fitting), (value) => {
        expect(look(own, value)).toStrictEqual(look(whole, value));
      });
      fc.assert(given, { seed: 1, numRuns: 300 });
    },
  );
});
