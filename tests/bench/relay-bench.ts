import { mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { noRedis, type OwnRedis, startRedis } from "../cobrowse/redis/redis-server.ts";
import { startRelayProcess } from "../cobrowse/relay-process.ts";
import { type Measured, startCrowd, startFloor, startRelays } from "./relay/processes.ts";
import { tableOf } from "./table.ts";

/** What is hoped for. */
const goal = { ofFloor: 0.4, caughtUp: 1000, openRooms: 2000, megabytes: 300 };
/** Entries that somebody lacks who comes back. */
const lacking = 20;

type Row = { name: string; perCpuSecond: number; delivered: number; median: number; slow: number };
type Setting = { rooms: number; seconds: number; perSecond: number };

/**
 * `npm run bench -- relay [--rooms 120] [--seconds 8] [--open-rooms 2000]`: rooms of three who talk, at a bare
 * broadcast, at a relay in memory and with its file, and at two relays over Redis, all in one run; then who comes back
 * after a relay was killed; then the memory of a relay with many rooms.
 */
export async function benchRelay(args: string[]): Promise<void> {
  const { values } = parseArgs({
    args,
    options: {
      rooms: { type: "string", default: "120" },
      seconds: { type: "string", default: "8" },
      "open-rooms": { type: "string", default: `${goal.openRooms}` },
    },
  });
  const setting = { rooms: Number(values.rooms), seconds: Number(values.seconds), perSecond: 4 };
  const folder = mkdtempSync(join(tmpdir(), "relay-bench-"));
  let redis: OwnRedis | null = null;
  try {
    if (noRedis) console.log(`What needs Redis is passed over: ${noRedis}.`);
    else redis = await startRedis();
    await benchTalk(setting, join(folder, "talk.log"), redis);
    await benchMemory(Number(values["open-rooms"]), redis);
  } finally {
    await redis?.remove();
    rmSync(folder, { recursive: true });
  }
}

async function benchTalk(setting: Setting, file: string, redis: OwnRedis | null): Promise<void> {
  const { rooms, seconds, perSecond } = setting;
  title(`${rooms} rooms of three, each saying ${perSecond} a second for ${seconds} s`);
  const stores: (() => Promise<Measured>)[] = [
    startFloor,
    () => startRelays("a relay in memory", "memory"),
    () => startRelays("a relay with its file", file),
    ...(redis ? [() => startRelays("two relays over Redis", redis.url, 2)] : []),
    startFloor,
  ];
  const rows: Row[] = [];
  const returns: [name: string, ms: number[]][] = [];
  let ofRedis = Number.NaN;
  for (const start of stores) {
    const measured = await start();
    const crowd = startCrowd(2);
    try {
      await crowd.all({ do: "meet", at: measured.at, ports: measured.ports, rooms, from: 0 });
      // Scripts are compiled by the engine as they run: nobody is measured cold.
      await crowd.all({ do: "talk", seconds: 3, perSecond });
      const [before, cpuOfRedis] = [await measured.cpu(), await cpuOf(redis)];
      const { sent, delays } = await crowd.all({ do: "talk", seconds, perSecond });
      const cpu = (await measured.cpu()) - before;
      if (measured.name.includes("Redis")) ofRedis = sent / ((await cpuOf(redis)) - cpuOfRedis);
      rows.push(rowOf(measured.name, sent, cpu, delays));
      const isKept = measured.at === "relay" && !measured.name.includes("memory");
      if (isKept) returns.push([measured.name, await killAndReturn(measured, crowd, file, redis)]);
    } finally {
      await crowd.end();
      await measured.end();
    }
  }
  sayHowBusy();
  const floor = rows.filter(({ name }) => name.startsWith("floor"));
  const perCpuSecond = floor.reduce((sum, row) => sum + row.perCpuSecond, 0) / floor.length;
  console.log(
    tableOf([
      ["", "events per CPU second", "of the floor", "delivered", "p50", "p99"],
      ...rows.map((row) => [
        row.name,
        `${Math.round(row.perCpuSecond)}`,
        `${Math.round((100 * row.perCpuSecond) / perCpuSecond)} %`,
        `${(100 * row.delivered).toFixed(2)} %`,
        `${row.median.toFixed(1)} ms`,
        `${row.slow.toFixed(1)} ms`,
      ]),
    ]),
  );
  if (redis) {
    console.log(`Redis itself: ${Math.round(ofRedis)} events per CPU second, besides.`);
    const ratio = (rows.find(({ name }) => name.includes("Redis"))?.perCpuSecond ?? 0) / perCpuSecond;
    sayGoal(
      ratio >= goal.ofFloor,
      `with Redis ${100 * goal.ofFloor} % of the floor: ${Math.round(100 * ratio)} %`,
    );
  }
  title(`A relay is killed; all of its lines come back at once, each lacking ${lacking} entries`);
  for (const [name, ms] of returns)
    sayGoal(
      shareOf(ms, 0.95) <= goal.caughtUp,
      `${name}: ${ms.length} have all within ${Math.round(shareOf(ms, 0.95))} ms at p95 (goal ${goal.caughtUp}), p50 ${Math.round(shareOf(ms, 0.5))} ms`,
    );
}

/** The milliseconds of everybody whose relay was killed and is there again. */
async function killAndReturn(
  measured: Measured,
  crowd: ReturnType<typeof startCrowd>,
  file: string,
  redis: OwnRedis | null,
): Promise<number[]> {
  const [first] = measured.relays;
  if (!first) return [];
  await first.kill();
  const store = measured.relays.length > 1 && redis ? redis.url : file;
  measured.relays[0] = await startRelayProcess(store, first.port);
  return (await crowd.all({ do: "come-back", port: first.port, lacking })).delays;
}

async function benchMemory(rooms: number, redis: OwnRedis | null): Promise<void> {
  title(`${rooms} open rooms of three at one relay, each of whom has said 10`);
  for (const [name, store] of [
    ["in memory", "memory"],
    ...(redis ? [["over Redis", redis.url]] : []),
  ] as const) {
    const measured = await startRelays(name, store);
    const crowd = startCrowd(2);
    try {
      const empty = await residentOf(measured);
      await crowd.all({ do: "meet", at: "relay", ports: measured.ports, rooms, from: 1_000_000 });
      await crowd.all({ do: "talk", seconds: 50, perSecond: 0.2 });
      const full = await residentOf(measured);
      const { lines = 0, rooms: open = 0 } = (await measured.relays[0]?.measure()) ?? {};
      sayGoal(
        open >= rooms && full < goal.megabytes,
        `${name}: ${full.toFixed(0)} MB with ${open} rooms and ${lines} lines (goal ${goal.megabytes}); ${empty.toFixed(0)} MB with none`,
      );
    } finally {
      await crowd.end();
      await measured.end();
    }
  }
}

async function residentOf({ relays }: Measured): Promise<number> {
  return ((await relays[0]?.measure())?.resident_bytes ?? 0) / 1e6;
}

async function cpuOf(redis: OwnRedis | null): Promise<number> {
  const info = `${(await redis?.ask("INFO", "cpu")) ?? ""}`;
  return [...info.matchAll(/^used_cpu_(?:sys|user):([\d.]+)/gm)].reduce(
    (sum, [, value]) => sum + Number(value),
    0,
  );
}

function rowOf(name: string, sent: number, cpu: number, delays: number[]): Row {
  return {
    name,
    perCpuSecond: sent / cpu,
    delivered: delays.length / (2 * sent),
    median: shareOf(delays, 0.5),
    slow: shareOf(delays, 0.99),
  };
}

function shareOf(numbers: number[], share: number): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}

/** What else ran meanwhile is in every time. */
function sayHowBusy(): void {
  const busy = (loadavg()[0] ?? 0) / cpus().length;
  if (busy > 0.7)
    console.log(`This machine is busy (${busy.toFixed(1)} tasks for each processor): times are too long.`);
}

const sayGoal = (met: boolean, says: string) => console.log(`${met ? "met " : "MISSED"} ${says}`);
const title = (text: string) => console.log(`\n${text}\n${"-".repeat(text.length)}`);
