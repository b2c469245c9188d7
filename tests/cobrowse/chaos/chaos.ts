import { isDeepStrictEqual } from "node:util";
import { meetAtRelay } from "../../bench/relay/member.ts";
import type { OwnRedis } from "../redis/redis-server.ts";
import { type RelayProcess, startRelayProcess } from "../relay-process.ts";
import { Walker } from "./walker.ts";

/** How much is to happen. */
export type Plan = {
  /** A path for one relay, or a Redis that has everything on the disk before it answers, for two. */
  store: string | OwnRedis;
  deliveries: number;
  relayKills: number;
  redisKills: number;
  /** Rooms at a time, and what each of the three says in one. */
  rooms: number;
  each: number;
  /** Milliseconds after which nothing new is begun. */
  lasts: number;
};

/** What has happened. */
export type Outcome = {
  deliveries: number;
  rooms: number;
  lost: number;
  twice: number;
  otherOrder: number;
  /** Whom a relay has told that there is nothing to come back to. */
  ended: number;
  relayKills: number;
  redisKills: number;
  cuts: number;
  seconds: number;
};

type Talk = { walkers: Walker[] };
const beat = 25;
const meetingLasts = 8000;
/** Milliseconds after the last kill; a talk that is not at rest by then has lost something. */
const restsWithin = 120_000;
const wait = (ms: number) => new Promise((done) => setTimeout(done, ms));

/**
 * Three in each room talk while relays and Redis are killed and lines are cut. A room is done once all that was said has
 * come to all three; then their journals are held against each other and against what each has said.
 */
export async function runChaos(plan: Plan): Promise<Outcome> {
  const { store } = plan;
  const redis = typeof store === "string" ? null : store;
  const address = typeof store === "string" ? store : store.url;
  const relays: RelayProcess[] = [];
  for (let nth = 0; nth < (redis ? 2 : 1); nth++) relays.push(await startRelayProcess(address));
  const ports = relays.map(({ port }) => port);
  const outcome: Outcome = {
    ...{
      deliveries: 0,
      rooms: 0,
      lost: 0,
      twice: 0,
      otherOrder: 0,
      ended: 0,
      relayKills: 0,
      redisKills: 0,
      cuts: 0,
    },
    seconds: 0,
  };
  const begun = Date.now();
  const isTime = () => Date.now() < begun + plan.lasts;
  const isEnough = () =>
    outcome.deliveries >= plan.deliveries &&
    outcome.relayKills >= plan.relayKills &&
    outcome.redisKills >= plan.redisKills;
  let met = 0;
  let isOver = false;

  const talk = async (): Promise<void> => {
    while (!isEnough() && isTime()) {
      const nth = met++;
      const members = await Promise.race([
        meetAtRelay(ports, nth).catch(() => null),
        wait(meetingLasts).then(() => null),
      ]);
      // A relay was killed while they met: nothing was said yet, and others meet.
      if (!members) {
        await wait(200);
        continue;
      }
      const talk: Talk = { walkers: [] };
      for (const { place, address: from, close } of members) {
        close();
        if (place) talk.walkers.push(new Walker(place, from, () => ports, Date.now()));
      }
      await untilDone(talk);
      judge(talk, outcome);
      for (const walker of talk.walkers) walker.cut();
    }
  };
  /** Until the kills are over nobody has to be at rest; afterwards nobody says anything new. */
  const untilDone = async ({ walkers }: Talk) => {
    const [phone] = walkers;
    let stopped = 0;
    for (let beats = 0; !stopped || Date.now() < stopped + restsWithin; beats++) {
      if (!stopped && (!isTime() || isEnough())) stopped = Date.now();
      for (const walker of walkers) {
        const { said, waiting, place } = walker;
        if (!stopped && said.length < plan.each && waiting < 4) walker.say(`${place.peer} ${said.length}`);
        walker.act(Date.now());
        if (!stopped && Math.random() < 0.0005) {
          outcome.cuts++;
          walker.cut();
        }
      }
      if (beats === 80) for (const kind of ["pause", "resume"]) phone?.steer(kind);
      const last = phone?.receiver.last;
      const isAtRest = walkers.every(
        ({ said, waiting, receiver, over }) =>
          over || ((stopped || said.length === plan.each) && !waiting && receiver.last === last),
      );
      if (isAtRest && beats > 80) return;
      await wait(beat);
    }
  };
  const killRelays = async () => {
    const pause = Math.min(4000, plan.lasts / (plan.relayKills + 1) / 2);
    for (let nth = 0; outcome.relayKills < plan.relayKills && !isOver && isTime(); nth++) {
      await wait(pause);
      const place = nth % relays.length;
      await relays[place]?.kill();
      outcome.relayKills++;
      relays[place] = await startRelayProcess(address, ports[place]);
    }
  };
  const killRedis = async () => {
    const pause = Math.min(20_000, plan.lasts / (plan.redisKills + 1) / 2);
    while (redis && outcome.redisKills < plan.redisKills && !isOver && isTime()) {
      await wait(pause);
      await redis.kill();
      outcome.redisKills++;
      await wait(200);
      await redis.start();
    }
  };
  const kills = [killRelays(), killRedis()];
  try {
    await Promise.all(Array.from({ length: plan.rooms }, talk));
    isOver = true;
    await Promise.all(kills);
  } finally {
    isOver = true;
    for (const relay of relays) await relay.kill();
  }
  return { ...outcome, seconds: (Date.now() - begun) / 1000 };
}

/** Holds the three journals of a room against each other and against what was said. */
function judge({ walkers }: Talk, outcome: Outcome): void {
  outcome.rooms++;
  outcome.ended += walkers.filter(({ over }) => over).length;
  const journals = walkers.map(({ journal }) => journal);
  for (const journal of journals) {
    const seqs = journal.map(({ seq }) => seq);
    if (
      !isDeepStrictEqual(
        seqs,
        seqs.map((_, place) => place + 1),
      )
    )
      outcome.otherOrder++;
    if (!isDeepStrictEqual(journal, journals[0])) outcome.otherOrder++;
    for (const { place, said } of walkers) {
      const heard = journal
        .filter(({ from, kind }) => from === place.peer && /entry|line/.test(kind))
        .map(({ body }) => body);
      const once = new Set(heard);
      outcome.deliveries += once.size;
      outcome.twice += heard.length - once.size;
      outcome.lost += said.filter((body) => !once.has(body)).length;
      if (!isDeepStrictEqual(heard, said)) outcome.otherOrder++;
    }
  }
}
