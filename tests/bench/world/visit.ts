import {
  type Guide,
  memoryOf,
  metaOf,
  parseEvent,
  record,
  type Session,
  settle,
  startSession,
} from "../../../src/session/index.ts";
import { type Texts, type Turn, turnOf } from "../../../src/turn/index.ts";
import { deeds } from "./answers/index.ts";
import { chanceOf } from "./chance.ts";
import { minutesOf } from "./effort.ts";
import { hazardAt, leadsBehind } from "./hazards.ts";
import type { Home } from "./home.ts";
import { confirmGate, doAsTold, nothingPrepared } from "./prepare.ts";
import { type Reply, replyTo } from "./reply.ts";
import type { Scene } from "./scene.ts";
import { runFor } from "./time.ts";

/** A conversation as it went, and how the kitchen stands after it. */
export type Visit = {
  home: Home;
  state: Home["state"];
  turns: { turn: string; said: string }[];
  ending: Ended | null;
  /** The session as it ended; null where it went round in circles. */
  session: Session | null;
  minutes: number;
  hours: number;
  fullGates: number;
  shortGates: number;
  askedTwice: number;
  /** Steps done in a state in which they can hurt, `turn: what is missing`. */
  hazards: string[];
  /** Turns that this world has no rule for. */
  unknown: string[];
  /** What we had changed, and is so still, and the ending says nothing of it. */
  leftBehind: string[];
};

export type Ended = {
  outcome: string;
  who: string | null;
  part: string | null;
  claim: string | null;
  /** What the ending names as causes, likeliest first. */
  causes: string[];
};

/** So many turns end any conversation: something goes round in circles. */
const mostTurns = 120;
const start = Date.parse("2026-03-03T09:00:00Z");

/** Talks one home through a session, as its people would. */
export function talk(guide: Guide, texts: Texts, home: Home, perfect: boolean): Visit {
  const visit = createVisit(home);
  const scene = createScene(home, visit, perfect);
  let session = startSession(guide, stamp(0));
  let done: string[] = [];
  for (let count = 0; count < mostTurns; count++) {
    const at = stamp(scene.now);
    const turn = turnOf(session, texts, at);
    if (turn.kind === "ending") {
      doAsTold(scene.prepared, [...turn.body, ...(turn.ending?.back ?? [])], scene.now);
      visit.ending = endedIn(session, turn);
      visit.session = session;
      visit.leftBehind = leftBehind(scene, turn);
      return visit;
    }
    const reply = replyTo(scene, turn, at, (id) => visit.unknown.push(id));
    note(visit, turn, reply, done);
    if ("answer" in reply && reply.answer !== "cannot" && reply.answer !== "not-sure")
      done = [...done, turn.turn];
    prepare(scene, visit, turn, reply);
    session = take(session, scene, visit, turn, reply);
  }
  return visit;
}

const stamp = (minutes: number) => new Date(start + minutes * 60_000).toISOString();

function createVisit(home: Home): Visit {
  const counts = { minutes: 0, hours: 0, fullGates: 0, shortGates: 0, askedTwice: 0 };
  const state = structuredClone(home.state);
  return {
    home,
    state,
    turns: [],
    ending: null,
    session: null,
    ...counts,
    hazards: [],
    unknown: [],
    leftBehind: [],
  };
}

function createScene(home: Home, { state }: Visit, perfect: boolean): Scene {
  return {
    home,
    machine: home.machine,
    state,
    person: home.person,
    prepared: nothingPrepared(),
    perfect,
    now: 0,
    slipped: new Map(),
    trait: (spot) => chanceOf(`${home.seed} ${spot}`),
    chance: chanceOf(`${home.seed} said`),
  };
}

/** What the words of a turn have them do before they answer, and what that lays bare. */
function prepare(scene: Scene, visit: Visit, turn: Turn, reply: Reply): void {
  const refused = "answer" in reply && (reply.answer === "cannot" || reply.answer === "not-sure");
  if (turn.kind === "gate") {
    if (!refused) confirmGate(scene.prepared, turn, scene.now);
  } else if (!refused || turn.turn.startsWith("tap-reopen")) {
    const stillFor = Math.max(
      0,
      ...[...turn.body.join(" ").matchAll(/(\d+) minutes/g)].map(([, found]) => Number(found)),
    );
    doStillness(scene, turn.body);
    for (const lack of hazardAt(turn.turn, scene.prepared, scene.now, stillFor))
      visit.hazards.push(`${turn.turn}: ${lack}`);
    if (scene.home.wetPlug && leadsBehind(turn.turn)) visit.hazards.push(`${turn.turn}: water at the plug`);
    const said = "answer" in reply ? turn.answers.find(({ id }) => id === reply.answer) : undefined;
    const isWell = said !== undefined && said.id === turn.answers[0]?.id;
    doAsTold(scene.prepared, turn.body, scene.now, isWell, /^wet\b/.test(said?.id ?? ""));
    // 'It wasn't, but it's open now' says what was done where the words before it only ask.
    if (said?.role === "own") doAsTold(scene.prepared, [said.text], scene.now);
  }
  scene.state.tapShutByUs = scene.prepared.tapShut && scene.machine.water === "plumbed";
}

/** What the first sentences say comes before what the step's hands do. */
function doStillness({ prepared, now }: Scene, body: readonly string[]): void {
  const [first = ""] = body;
  if (/plug out|switch the ice maker off|unplug/i.test(first)) doAsTold(prepared, [first], now);
}

function take(session: Session, scene: Scene, visit: Visit, turn: Turn, reply: Reply): Session {
  const spent = minutesOf(turn, reply);
  visit.minutes += spent;
  scene.now += spent;
  if ("wait" in reply) return waitOut(session, scene, visit, turn);
  const at = stamp(scene.now);
  const event = parseEvent({ ...eventOf(reply, turn.turn), at });
  const next = event && record(session, event);
  if (next && !next.refusal) {
    if ("answer" in reply) deeds[`${turn.turn}:${reply.answer}`]?.(scene.state, scene);
    return next.session;
  }
  visit.unknown.push(`${turn.turn} refused ${JSON.stringify(reply)}`);
  for (const { id } of [...turn.answers].reverse()) {
    const other = parseEvent({ type: "answered", turn: turn.turn, answer: id, at });
    const taken = other && record(session, other);
    if (taken && !taken.refusal) return taken.session;
  }
  throw new Error(`No way on from ${turn.turn}`);
}

function eventOf(reply: Exclude<Reply, { wait: true }>, turn: string): object {
  if ("reading" in reply) return { type: "measured", turn, reading: reply.reading };
  if ("code" in reply) return { type: "model-given", turn, code: null, typed: "" };
  return { type: "answered", turn, answer: reply.answer, ...(reply.items ? { items: reply.items } : {}) };
}

function waitOut(session: Session, scene: Scene, visit: Visit, turn: Turn): Session {
  const until = turn.wait ? (Date.parse(turn.wait.until) - start) / 60_000 : scene.now + 30;
  const minutes = Math.max(0, until - scene.now) + 1;
  visit.hours += minutes / 60;
  runFor(scene.state, scene.machine, minutes / 60, scene.prepared.plugOut);
  scene.now += minutes;
  const waited = settle(session, stamp(scene.now));
  if (metaOf(waited).turn !== turn.turn) return waited;
  // A wait that does not end by itself is ended by its first answer.
  const [first] = metaOf(waited).answers ?? [];
  const event = parseEvent({
    type: "answered",
    turn: turn.turn,
    answer: first ?? "cannot",
    at: stamp(scene.now),
  });
  const next = event && record(waited, event);
  if (!next || next.refusal) throw new Error(`The wait at ${turn.turn} does not end`);
  return next.session;
}

/** A gate in one line asks whether what was confirmed is still so. */
const isFull = ({ gate }: Turn) => gate !== null && gate.items.length > 1 && !("short" in gate && gate.short);

function note(visit: Visit, turn: Turn, reply: Reply, done: readonly string[]): void {
  const said = "answer" in reply ? reply.answer : JSON.stringify("reading" in reply ? reply.reading : reply);
  visit.turns.push({ turn: turn.turn, said });
  if (turn.kind === "gate") {
    if (isFull(turn)) visit.fullGates++;
    else visit.shortGates++;
  } else if (turn.kind !== "wait" && turn.kind !== "model" && done.includes(turn.turn)) visit.askedTwice++;
}

function endedIn(session: Session, turn: Turn): Ended {
  const { ending } = turn;
  const { who } = memoryOf(session);
  return {
    outcome: ending?.outcome ?? "none",
    who: ending?.outcome === "professional" ? who : null,
    part: ending?.part?.kind ?? null,
    claim: ending?.part?.claim ?? null,
    causes: namedCauses(ending),
  };
}

/** The ids of causes in an ending: the one that it is about, then any list of candidates that it shows. */
function namedCauses(ending: Turn["ending"]): string[] {
  const listed = Object.values(ending ?? {}).flatMap((value) =>
    Array.isArray(value)
      ? value.flatMap((one) =>
          typeof one === "object" && one && "causeId" in one ? [String(one.causeId)] : [],
        )
      : [],
  );
  const all = [...(ending?.causeId ? [ending.causeId] : []), ...listed];
  // 'Anything else' names nothing.
  return [...new Set(all)].filter((cause) => cause !== "anything-else");
}

function leftBehind({ prepared, machine }: Scene, turn: Turn): string[] {
  const words = [...turn.body, ...(turn.ending?.back ?? [])].join(" ");
  const changed: [string, boolean, RegExp][] = [
    ["tap closed", prepared.tapShut && machine.water === "plumbed", /tap/i],
    ["plug out", prepared.plugOut, /plug/i],
    ["ice maker off", prepared.iceOffSince !== null, /ice maker/i],
    ["bin out", prepared.binOut, /bin\b/i],
    ["locked", prepared.locked, /lock/i],
    ["pulled out", prepared.pulledOut, /pulled out/i],
  ];
  return changed.flatMap(([what, isSo, said]) => (isSo && !said.test(words) ? [what] : []));
}
