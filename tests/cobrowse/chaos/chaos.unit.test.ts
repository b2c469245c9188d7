import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { noRedis, startRedis, withRedis } from "../redis/redis-server.ts";
import { type Outcome, type Plan, runChaos } from "./chaos.ts";

/* A short one of the run that `npm run soak -- relay` does at length. */

const plan: Omit<Plan, "store"> = {
  ...{ deliveries: 300, relayKills: 2, redisKills: 1, rooms: 3, each: 12, lasts: 60_000 },
};
const faultless = { lost: 0, twice: 0, otherOrder: 0, ended: 0 };

function expectEnough(outcome: Outcome, kills: Pick<Outcome, "relayKills" | "redisKills">) {
  expect(outcome).toMatchObject({ ...faultless, ...kills });
  expect(outcome.deliveries).toBeGreaterThanOrEqual(plan.deliveries);
}

describe("relays that are killed while people talk, on lines that are cut,", () => {
  test("lose nothing, say nothing twice and have one order: one with its file", async () => {
    const folder = mkdtempSync(join(tmpdir(), "relay "));
    const kills = { relayKills: 1, redisKills: 0 };
    expectEnough(await runChaos({ ...plan, ...kills, store: join(folder, "relay.log") }), kills);
    rmSync(folder, { recursive: true });
  });

  test.skipIf(noRedis)(`and two, ${withRedis} killed as well`, async () => {
    const redis = await startRedis(true);
    expectEnough(await runChaos({ ...plan, store: redis }), { relayKills: 2, redisKills: 1 });
    await redis.remove();
  });
});
