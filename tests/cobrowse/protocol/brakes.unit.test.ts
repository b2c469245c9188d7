import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createBrakes } from "../../../src/cobrowse/protocol/room/index.ts";
import { openRedisStore, type Store } from "../../../src/cobrowse/relay/index.ts";
import { noRedis, type OwnRedis, startRedis, withRedis } from "../redis/redis-server.ts";

const minute = 60_000;
let redis: OwnRedis | null = null;
const stores: Store[] = [];
beforeAll(async () => {
  redis = noRedis ? null : await startRedis();
});
afterAll(async () => {
  await Promise.all(stores.map((store) => store.close()));
  await redis?.remove();
});
/** Brakes of two relays that share a Redis, in turn; those of each test know nothing of another's. */
const sharedBrakes = () => {
  const shop = `shop-${stores.length}`;
  const open = () => openRedisStore({ url: redis?.url ?? "", shop, seal: (name) => name, onState: () => {} });
  const pair = [open(), open()] as const;
  stores.push(...pair);
  let nth = 0;
  const next = () => (pair[nth++ % 2] ?? pair[0]).brakes;
  return {
    tries: (...given: Parameters<Store["brakes"]["tries"]>) => next().tries(...given),
    held: (...given: Parameters<Store["brakes"]["held"]>) => next().held(...given),
    failed: (...given: Parameters<Store["brakes"]["failed"]>) => next().failed(...given),
    succeeded: (...given: Parameters<Store["brakes"]["succeeded"]>) => next().succeeded(...given),
  };
};

describe.each<[string, () => Store["brakes"], string]>([
  ["at one relay", createBrakes, ""],
  [`at two, ${withRedis},`, sharedBrakes, noRedis],
])("guessing %s", (_, makeBrakes, isSkipped) => {
  test.skipIf(isSkipped)(
    "is looked at five times a minute from one address, and then again when the first is a minute old",
    async () => {
      const brakes = makeBrakes();
      for (let nth = 0; nth < 5; nth++) expect(await brakes.tries("a", nth * 1000)).toBe(null);
      expect(await brakes.tries("a", 5000)).toEqual({ why: "too-often", wait: 55_000 });
      expect(await brakes.tries("b", 5000)).toBe(null);
      expect(await brakes.tries("a", minute)).toBe(null);
      expect(await brakes.tries("a", minute)).toMatchObject({ why: "too-often" });
    },
  );

  test.skipIf(isSkipped)(
    "is locked for fifteen minutes after ten failures, for the address and for the agent",
    async () => {
      const brakes = makeBrakes();
      for (let nth = 1; nth <= 9; nth++) await brakes.failed(["address", "agent"], nth * minute);
      expect(await brakes.held(["address"], 9 * minute)).toBe(null);
      await brakes.failed(["address", "agent"], 10 * minute);
      for (const name of ["address", "agent"])
        expect(await brakes.held([name], 10 * minute)).toEqual({ why: "locked", wait: 15 * minute });
      // From elsewhere the same agent is locked as well; another one is not.
      expect(await brakes.held(["elsewhere", "agent"], 24 * minute)).toEqual({ why: "locked", wait: minute });
      expect(await brakes.held(["elsewhere", "other"], 24 * minute)).toBe(null);
      expect(await brakes.held(["address", "agent"], 25 * minute)).toBe(null);
    },
  );

  test.skipIf(isSkipped)("counts failures in a row: a code that was right ends the row", async () => {
    const brakes = makeBrakes();
    for (let nth = 1; nth <= 9; nth++) await brakes.failed(["a"], nth * minute);
    await brakes.succeeded(["a"]);
    await brakes.failed(["a"], 10 * minute);
    expect(await brakes.held(["a"], 10 * minute)).toBe(null);
  });

  test.skipIf(isSkipped)("from everywhere at once holds everybody, until the minute is over", async () => {
    const brakes = makeBrakes();
    for (let nth = 0; nth < 50; nth++) await brakes.failed([`address-${nth}`], nth);
    expect(await brakes.held(["new"], 1000)).toEqual({ why: "busy", wait: 59_000 });
    expect(await brakes.held(["new"], minute + 50)).toBe(null);
  });

  test.skipIf(isSkipped)("from names that objects have anyway counts as from any other", async () => {
    const brakes = makeBrakes();
    for (let nth = 0; nth < 5; nth++) expect(await brakes.tries("__proto__", 0)).toBe(null);
    expect(await brakes.tries("__proto__", 0)).not.toBe(null);
    expect(await brakes.tries("constructor", 0)).toBe(null);
  });
});

test("brakes of one relay forget nobody who is locked, from however many new addresses others come", () => {
  const brakes = createBrakes();
  for (let nth = 0; nth < 10; nth++) brakes.failed(["locked"], 0);
  for (let nth = 0; nth < 30_000; nth++) brakes.tries(`address-${nth}`, minute);
  expect(brakes.held(["locked"], 2 * minute)).toMatchObject({ why: "locked" });
});
