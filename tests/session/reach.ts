import type { Reading } from "../../src/instruments/index.ts";
import { memoryOf, metaOf, type Session } from "../../src/session/index.ts";
import { sound } from "../compile/scenario-paths.ts";
import { ownFlow } from "../own-flow.ts";
import { type Answers, runsOut, take } from "./drive.ts";
import { type Aim, type Chance, hintsFor, mayLeadTo, readingsFor } from "./hints.ts";

const flow = ownFlow;

/** So many different ways are tried before a turn counts as not to be come to. */
const mostTries = 800;
/** Once there is a way, so many more are tried for a better one. */
const triesForBetter = 10;
/** Longer than any search: nobody is asked this often. */
const mostSteps = 60;
/** How often a try strays from what a sound machine shows, one try after the other. */
const strays = [0, 0.05, 0.1, 0.2, 0.35, 0.5];

/** A session that is where it was to come, and the answers on the way that a sound machine would not give. */
type Found = { session: Session; plan: Answers };

/**
 * A session that stands at the turn `target`, or at its ending for `cause`. Every turn that `answers` names was
 * answered that way where it came up; every other as on a sound machine (gates confirmed), or, where that does not
 * lead there, some in another way: as few as can be, and of such ways the shortest that was found. Which check comes
 * when is left to the session's advice. Equal calls give equal sessions.
 * @param start where to begin, such as a fresh session
 * @param most so many different ways are tried
 * @throws Error naming the turn where no way was found, and one that does not take the answer named for it
 */
export function reach(
  start: Session,
  target: string,
  answers: Answers = {},
  cause?: string,
  most = mostTries,
): Session {
  const aim = { turn: target, cause };
  let best: Found | undefined;
  let left = most;
  for (const { along, plan } of waysTo(start, aim, answers)) {
    const session = along.find((one) => isThere(one, aim));
    if (session) {
      left = Math.min(left, triesForBetter);
      const found = plainer(start, aim, answers, { session, plan });
      if (!best || isBetter(found, best)) best = found;
    }
    if (left-- <= 0 || (best && Object.keys(best.plan).length === 0)) break;
  }
  if (!best) throw new Error(`No way to ${cause ? `${target} for ${cause}` : target} was found`);
  return best.session;
}

/** One way after the other from `start`, such as might come by what is aimed at; the same ones every time. */
export function* waysTo(start: Session, aim: Aim, answers: Answers = {}) {
  for (let seed = 0; ; seed++) {
    const chance = createChance(seed);
    // First of all straight on, as on a machine that looks sound.
    const hints = seed === 0 ? {} : hintsFor(flow, aim, chance);
    const stray = strays[seed % strays.length] ?? 0;
    const plan: Answers = {};
    const along = walk(start, aim, (session) => {
      const { turn } = metaOf(session);
      if (turn in answers || turn in plan) return answers[turn] ?? plan[turn];
      const hint = hints[turn];
      if (hint !== undefined && chance() > stray / 2) plan[turn] = hint;
      else if (seed > 0 && chance() < stray) {
        const others = answersAt(session);
        plan[turn] = others[Math.floor(chance() * others.length)] ?? "cannot";
      }
      return plan[turn];
    });
    yield { along, plan };
  }
}

/** The same way with as few answers as it takes that a sound machine would not give. */
function plainer(start: Session, aim: Aim, answers: Answers, found: Found): Found {
  let best = found;
  for (const turn of Object.keys(found.plan)) {
    const { [turn]: _, ...plan } = best.plan;
    const along = walk(start, aim, (session) => ({ ...plan, ...answers })[metaOf(session).turn]);
    const session = along.find((one) => isThere(one, aim));
    if (session) best = { session, plan };
  }
  return best;
}

function isBetter({ session, plan }: Found, than: Found): boolean {
  const fewer = Object.keys(than.plan).length - Object.keys(plan).length;
  return fewer > 0 || (fewer === 0 && session.log.events.length < than.session.log.events.length);
}

/** The sessions of one way, the first being `start`; it ends where nothing follows or nothing of what is aimed at can. */
function walk(start: Session, aim: Aim, answer: (session: Session) => string | Reading | undefined) {
  const along = [start];
  for (;;) {
    const session = along.at(-1) as Session;
    const { kind } = metaOf(session);
    if (kind === "ending" || kind === "model" || along.length > mostSteps || isElsewhere(session, aim))
      return along;
    along.push(take(session, answer(session) ?? soundAnswer(session)));
  }
}

/** What a sound machine shows at a session's turn; where nobody said, what keeps the search going. Gates are confirmed. */
export function soundAnswer(session: Session): string | Reading {
  return sound[metaOf(session).turn] ?? answersAt(session)[0] ?? "cannot";
}

/** Whether a session stands at what is aimed at. */
export function isThere(session: Session, { turn, cause }: Aim): boolean {
  return metaOf(session).turn === turn && (cause === undefined || memoryOf(session).cause === cause);
}

/** In a scenario that has no such check, or no such cause. */
function isElsewhere({ snapshot }: Session, aim: Aim): boolean {
  const [place = ""] = Object.keys(snapshot.value);
  return place in flow.scenarios && !mayLeadTo(flow, place, aim);
}

/** What can be answered at a turn, first what keeps the search going. */
function answersAt(session: Session): (string | Reading)[] {
  const meta = metaOf(session);
  const { kind, turn, answers = [] } = meta;
  if (kind === "gate") return ["ready", "cannot"];
  const [check = "", name = ""] = turn.split(".");
  const rule = (flow.checks[check] ?? flow.opening).turns[name];
  const ends = (answer: string) => /fixed|professional|stopped/.test(rule?.answers?.[answer]?.to ?? "");
  const standing = ["not-sure", "cannot"].filter((id) =>
    session.snapshot.can({ type: `answered.${id}`, at: session.log.started } as never),
  );
  return [
    ...(kind === "wait" ? [runsOut] : []),
    ...Object.values(readingsFor(meta)),
    ...[...answers].sort((a, b) => Number(ends(a)) - Number(ends(b))),
    ...standing,
  ];
}

/** The same numbers for the same seed (a linear congruential generator, Numerical Recipes' constants). */
function createChance(seed: number): Chance {
  let state = seed * 7919;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
