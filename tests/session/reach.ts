import type { Reading } from "../../src/measurement/index.ts";
import { memoryOf, metaOf, type Session } from "../../src/session/index.ts";
import { signs, sound } from "../flow/scenario-paths.ts";
import { type Answers, celsius, fittedOn, flowOf, runsOut, take } from "./drive.ts";

/** The turn to come to, and where many causes end with the same turn, the cause. */
export type Aim = { turn: string; cause?: string | undefined };

/** So many different ways are tried before a turn counts as not to be come to. */
const mostTries = 800;
/** Once there is a way, so many more are tried for a shorter one. */
const triesForShorter = 10;
/** Longer than any search: nobody is asked this often. */
const mostSteps = 60;
/** How often a try strays from what a sound machine shows, one try after the other. */
const strays = [0, 0.05, 0.1, 0.2, 0.35, 0.5];

/**
 * A session that stands at the turn `target`, or at its ending for `cause`. Every turn that `answers` names was
 * answered that way where it came up; every other as on a sound machine (gates confirmed), or, where that does not
 * lead there, in some other way. Which check comes when is left to the session's advice. Equal calls give equal sessions.
 * @param start where to begin, such as a fresh session; the session itself where it stands at the turn already
 * @throws Error naming the turn where no way was found
 */
export function reach(start: Session, target: string, answers: Answers = {}, cause?: string): Session {
  const aim = { turn: target, cause };
  let best: { session: Session; plan: Answers } | undefined;
  let left = mostTries;
  for (const { along, plan } of waysTo(start, aim, answers)) {
    const at = along.findIndex((session) => isThere(session, aim));
    const session = along[at];
    if (session && (!best || lengthOf(session) < lengthOf(best.session))) {
      left = best ? left : triesForShorter;
      best = { session, plan };
    }
    if (left-- <= 0) break;
  }
  if (!best) throw new Error(`No way to ${cause ? `${target} for ${cause}` : target} was found`);
  return plainer(start, aim, answers, best).session;
}

/** One way after the other from `start`, such as might come by what is aimed at; the same ones every time. */
export function* waysTo(start: Session, aim: Aim, answers: Answers = {}) {
  const hints: Answers = { ...signs[aim.cause ?? ""], ...wayInto(start, aim.turn) };
  for (let seed = 0; ; seed++) {
    const chance = createChance(seed);
    const stray = strays[seed % strays.length] ?? 0;
    const plan: Answers = {};
    const along = walk(start, aim, (session) => {
      const { turn } = metaOf(session);
      if (turn in answers || turn in plan) return answers[turn] ?? plan[turn];
      const isOpening = turn.startsWith("opening.");
      const hint = hints[turn];
      if (hint !== undefined && chance() > stray / 2) plan[turn] = hint;
      else if (seed > 0 && chance() < (isOpening ? 0.7 : stray)) {
        const others = answersAt(session);
        plan[turn] = others[Math.floor(chance() * others.length)] ?? "cannot";
      }
      return plan[turn];
    });
    yield { along, plan };
  }
}

/** The same way with as few answers as it takes that a sound machine would not give. */
function plainer(start: Session, aim: Aim, answers: Answers, found: { session: Session; plan: Answers }) {
  let best = found;
  for (const turn of Object.keys(found.plan)) {
    const { [turn]: _, ...plan } = best.plan;
    const along = walk(start, aim, (session) => ({ ...plan, ...answers })[metaOf(session).turn]);
    const session = along.find((one) => isThere(one, aim));
    if (session && lengthOf(session) <= lengthOf(best.session)) best = { session, plan };
  }
  return best;
}

/** The sessions of one way, the first being `start`; it ends where nothing follows or nothing of what is aimed at can. */
function walk(start: Session, aim: Aim, answer: (session: Session) => string | Reading | undefined) {
  const along = [start];
  for (;;) {
    const session = along.at(-1) as Session;
    const { turn, kind } = metaOf(session);
    if (kind === "ending" || kind === "model" || along.length > mostSteps || !mayLeadTo(session, aim))
      return along;
    const given = answer(session) ?? sound[turn];
    const next = answersAt(session);
    // What a sound machine shows may not be among the answers here: a wait that only runs out, a gate.
    const fits = typeof given !== "string" || next.includes(given);
    along.push(take(session, given !== undefined && fits ? given : (next[0] ?? "cannot")));
  }
}

/** Whether a session stands at what is aimed at. */
export function isThere(session: Session, { turn, cause }: Aim): boolean {
  return metaOf(session).turn === turn && (cause === undefined || memoryOf(session).cause === cause);
}

const lengthOf = ({ log }: Session) => log.events.length;

/** A scenario that has no such check, or no such cause, leads nowhere near. */
function mayLeadTo({ flow, snapshot }: Session, { turn, cause }: Aim): boolean {
  const scenario = flow.scenarios[Object.keys(snapshot.value)[0] ?? ""];
  const check = turn.split(".")[0] ?? "";
  if (!scenario) return true;
  if (check in flow.checks && !scenario.checks.some((entry) => entry.check === check)) return false;
  return !cause || cause in scenario.priors || scenario.proofs.includes(cause);
}

/** The answers that lead from a check's first turn to this one. */
function wayInto({ flow }: Session, target: string): Answers {
  const [id = "", wanted = ""] = target.split(".");
  const rule = flow.checks[id] ?? (id === flow.opening.id ? flow.opening : undefined);
  if (!rule) return {};
  const ways: [turn: string, answers: Answers][] = [[rule.start, {}]];
  for (const [turn, before] of ways) {
    if (turn === wanted) return before;
    const { answers = {}, verdicts, then } = rule.turns[turn] ?? {};
    const readings = verdicts ? Object.entries(verdicts) : [];
    const on = [
      ...Object.entries(answers).map(([answer, { to }]) => [answer, to] as const),
      ...readings.flatMap(([verdict, { to }]) => {
        const reading = readingFor(rule.turns[turn]?.instrument, verdict);
        return reading ? [[reading, to] as const] : [];
      }),
      ...(["not-sure", "cannot"] as const).flatMap((answer) => {
        const outcome = rule.turns[turn]?.[answer];
        return outcome ? [[answer, outcome.to] as const] : [];
      }),
      ...(then ? [[runsOut, then] as const] : []),
    ];
    for (const [answer, to] of on)
      if (to in rule.turns && ways.length < 100) ways.push([to, { ...before, [`${id}.${turn}`]: answer }]);
  }
  return {};
}

const readings = {
  flow: { passes: flowOf(25), fails: flowOf(5) },
  temperature: { passes: celsius(-18), fails: celsius(-5) },
  "filter-age": { passes: fittedOn("2026-02-01"), fails: fittedOn("2024-02-01") },
} as Record<string, Record<string, Reading>>;

const readingFor = (instrument: string | undefined, verdict: string) => readings[instrument ?? ""]?.[verdict];

/** What can be answered at a turn, first what keeps the search going. */
function answersAt(session: Session): (string | Reading)[] {
  const { kind, turn, instrument, answers = [] } = metaOf(session);
  if (kind === "gate") return ["ready", "cannot"];
  const [check = "", name = ""] = turn.split(".");
  const rule = (session.flow.checks[check] ?? session.flow.opening).turns[name];
  const ends = (answer: string) => /fixed|professional|stopped/.test(rule?.answers?.[answer]?.to ?? "");
  const standing = ["not-sure", "cannot"].filter((id) =>
    session.snapshot.can({ type: `answered.${id}`, at: session.log.started } as never),
  );
  return [
    ...(kind === "wait" ? [runsOut] : []),
    ...Object.values(readings[instrument ?? ""] ?? {}),
    ...[...answers].sort((a, b) => Number(ends(a)) - Number(ends(b))),
    ...standing,
  ];
}

/** Numbers from 0 to 1 that look like chance and are the same every time (a 32-bit xorshift, Marsaglia 2003). */
function createChance(seed: number): () => number {
  let state = (seed + 1) * 0x9e3779b9;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
