import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { type Outcome, runChaos } from "../cobrowse/chaos/chaos.ts";
import { noRedis, startRedis } from "../cobrowse/redis/redis-server.ts";

/**
 * `npm run soak -- relay [--deliveries 1000000] [--relay-kills 100] [--redis-kills 20] [--rooms 120] [--minutes 40]`:
 * rooms of three talk while relays and Redis are killed and lines are cut; without Redis, at one relay with its file.
 * @returns whether nothing was lost, nothing came twice and all had one order, with as much of it as was asked for
 */
export async function soakRelay(args: string[]): Promise<boolean> {
  const { values } = parseArgs({
    args,
    options: {
      deliveries: { type: "string", default: "1000000" },
      "relay-kills": { type: "string", default: "100" },
      "redis-kills": { type: "string", default: "20" },
      rooms: { type: "string", default: "120" },
      minutes: { type: "string", default: "40" },
      file: { type: "boolean", default: false },
    },
  });
  const isFile = values.file || noRedis !== "";
  if (noRedis) console.log(`With a file in place of Redis: ${noRedis}.`);
  const plan = {
    deliveries: Number(values.deliveries),
    relayKills: Number(values["relay-kills"]),
    redisKills: isFile ? 0 : Number(values["redis-kills"]),
    rooms: Number(values.rooms),
    each: 150,
    lasts: Number(values.minutes) * 60_000,
  };
  const folder = mkdtempSync(join(tmpdir(), "relay-soak-"));
  const redis = isFile ? null : await startRedis(true);
  try {
    const outcome = await runChaos({ ...plan, store: redis ?? join(folder, "relay.log") });
    console.log(saysOf(outcome));
    const isWhole =
      outcome.deliveries >= plan.deliveries &&
      outcome.relayKills >= plan.relayKills &&
      outcome.redisKills >= plan.redisKills;
    if (!isWhole) console.log("Time was over before all of it had happened.");
    return isWhole && outcome.lost + outcome.twice + outcome.otherOrder + outcome.ended === 0;
  } finally {
    await redis?.remove();
    rmSync(folder, { recursive: true });
  }
}

function saysOf({
  deliveries,
  ended,
  rooms,
  lost,
  twice,
  otherOrder,
  relayKills,
  redisKills,
  cuts,
  seconds,
}: Outcome): string {
  return [
    `${deliveries} deliveries in ${rooms} rooms of three, ${Math.round(seconds)} s;`,
    `${relayKills} relays killed, Redis killed ${redisKills} times, ${cuts} lines cut besides:`,
    `${lost} lost, ${twice} twice, ${otherOrder} in another order, ${ended} sent away`,
  ].join(" ");
}
