import type { FindResult, FitResult } from "../../catalogue/index.ts";
import {
  type Guide,
  metaOf,
  parseEvent,
  type Refusal,
  record,
  type Session,
  settle,
  startSession,
} from "../../session/index.ts";
import { createTexts, type Resource, type Texts, type Turn, turnOf } from "../../turn/index.ts";

export type PlayOptions = {
  guide: Guide;
  locales: Record<string, Resource>;
  language: string;
  /** The texts of that language, where a conversation before this one has made them already. */
  texts?: Texts;
  /** A confirmed model code, or null. */
  model: string | null;
  /** Start at the first question of this scenario instead of the opening. */
  scenario: string | null;
  /** RFC 3339. Every answer is taken to be given at this instant, unless its line has an `at` of its own. */
  now: string;
  partFor(code: string, kind: string): FitResult;
  findModel(typed: string): FindResult;
};

/** One printed line: a turn, or an error that changed nothing. */
export type PlayLine = Partial<Turn> & { fits?: FitResult } & Record<string, unknown>;

export type Play = { first: PlayLine; take(line: string): PlayLine; isOver(): boolean };

const reasons: Record<Refusal, string> = {
  "other-turn": "That turn is not the current one.",
  "unknown-answer": "The turn has no such answer.",
  "items-missing": "Every item of the gate must be in `items`.",
  unreadable: "The reading does not fit the instrument, or cannot be right.",
  "not-now": "That cannot happen at this turn.",
};

/**
 * A session driven by lines: `{"answer":"lock-off"}`, `{"answer":"ready","items":[…]}`, `{"reading":{…}}`,
 * `{"code":"…"}` or `{"code":null}`, `{"danger":"gas"}`, `{"help":true}`, `{"ice":true}`,
 * `{"trouble":true}` where it came back, `{"at":"…"}` alone to let time pass. A line may name its `turn`; without one it is meant for the current turn.
 */
export function createPlay(options: PlayOptions): Play {
  const { texts = createTexts(options.locales, options.language, options.guide.flow) } = options;
  let session = openAt(options);
  let now = options.now;
  const show = (): PlayLine => {
    const turn = turnOf(session, texts, now);
    const part = turn.ending?.part;
    return part?.model ? { ...turn, fits: options.partFor(part.model, part.kind) } : turn;
  };
  const refuse = (message: string): PlayLine => ({ error: message, turn: metaOf(session).turn });
  return {
    first: show(),
    isOver: () => metaOf(session).kind === "ending",
    take(line) {
      const given = readLine(line);
      if (!given) return refuse("Each line must be one JSON object.");
      const at = typeof given.at === "string" ? given.at : now;
      if (!parseEvent({ type: "wait-ended", at })) return refuse('"at" must be an RFC 3339 time.');
      const turn = typeof given.turn === "string" ? given.turn : metaOf(session).turn;
      const waited = settle(session, at);
      if (
        !(
          "answer" in given ||
          "reading" in given ||
          "code" in given ||
          "danger" in given ||
          given.help ||
          given.ice ||
          given.trouble
        )
      ) {
        if (!("at" in given))
          return refuse("Give an answer, a reading, a code, danger, help, ice, trouble, or a time.");
        [session, now] = [waited, at];
        return show();
      }
      const found = typeof given.code === "string" ? options.findModel(given.code) : null;
      const code = found && confirmedCode(found);
      if (found && code === null) return { ...refuse("No such model code, or not exactly."), found };
      const event = parseEvent(eventOf(given, turn, code, at));
      if (!event) return refuse("The line does not have the shape of an answer or a reading.");
      const next = record(waited, event);
      if (next.refusal) return refuse(reasons[next.refusal]);
      [session, now] = [next.session, at];
      return show();
    },
  };
}

/** The code that was meant beyond doubt: the only one like it, or one of several that is written as the catalogue has it. */
export function confirmedCode(found: FindResult): string | null {
  if (found.kind === "exact") return found.model.code;
  const written = found.kind === "near" && found.candidates.find(({ model }) => model.code === found.typed);
  return written ? written.model.code : null;
}

function eventOf(given: Record<string, unknown>, turn: string, code: string | null, at: string): unknown {
  if ("answer" in given)
    return {
      type: "answered",
      turn,
      answer: given.answer,
      at,
      ...("items" in given ? { items: given.items } : {}),
    };
  if ("reading" in given) return { type: "measured", turn, reading: given.reading, at };
  if ("code" in given) return { type: "model-given", turn, code, typed: String(given.code ?? ""), at };
  if ("danger" in given) return { type: "danger-reported", danger: given.danger, at };
  return { type: given.help ? "help-asked" : given.ice ? "ice-returned" : "trouble-returned", at };
}

/** A line as a JSON object; null for anything else. */
export function readLine(line: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(line);
    return typeof value === "object" && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : null;
  } catch {
    return null;
  }
}

/** Answers the opening so that the wished scenario begins; the way is searched, never written down here. */
function openAt({ guide, model, scenario, now }: PlayOptions): Session {
  const first = startSession(guide, now, model);
  if (!scenario) return first;
  const open = [first];
  for (const session of open) {
    if (Object.hasOwn(Object(session.snapshot.value), scenario)) return session;
    const { turn, answers = [] } = metaOf(session);
    if (!turn.startsWith("opening.")) continue;
    for (const answer of answers)
      open.push(record(session, { type: "answered", turn, answer, at: now }).session);
  }
  throw new Error(`Nothing in the opening leads to "${scenario}"`);
}
