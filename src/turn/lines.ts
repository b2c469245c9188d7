import type { Finding, FlowSlice } from "../chart/index.ts";
import { verdictOn } from "../instruments/index.ts";
import type { LogEvent } from "../session/index.ts";
import { isStopped, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";
import { foundText, titleOf } from "./findings.ts";
import { lineOf } from "./own-words.ts";
import type { Line } from "./turn.ts";

/**
 * The earlier turns, each folded to a line; only what a person answered, in the order it happened: what greets was
 * answered before the question about danger. None can be changed after a stop.
 */
export function linesOf(session: Session, texts: Texts): Line[] {
  const canChange = !isStopped(session);
  const answers = session.log.events.flatMap((event, index) => ("turn" in event ? [{ event, index }] : []));
  const lines = answers.map(({ event, index }, place) => ({
    index,
    turn: event.turn,
    ...wordsOfAnswer(event, session, texts),
    drops: answers.length - place - 1,
    canChange,
  }));
  const isFirst = ({ turn }: Line) => turn === session.flow.greets;
  return [...lines.filter(isFirst), ...lines.filter((line) => !isFirst(line))];
}

type Words = Pick<Line, "title" | "answer" | "words">;

/** An event never changes, and every turn says all of them again: judging a reading takes longer than the rest. */
const known = new WeakMap<LogEvent, { flow: FlowSlice; texts: Texts; words: Words }>();

/** What a turn was answered with, in words, whether that is still in force or not. */
export function wordsOfAnswer(
  event: Extract<LogEvent, { turn: string }>,
  session: Session,
  texts: Texts,
): Words {
  const before = known.get(event);
  if (before?.texts === texts && before.flow === session.flow) return before.words;
  const answer = answerText(event, session, texts);
  const words = { title: titleOf(event.turn, texts), ...lineOf(event, answer, texts) };
  known.set(event, { flow: session.flow, texts, words });
  return words;
}

function answerText(event: Extract<LogEvent, { turn: string }>, { flow }: Session, texts: Texts): string {
  if (event.type === "model-given") return event.code ?? texts("findings.model-none");
  if (event.type === "answered") return foundText(event.turn, event, flow, texts);
  const reading = event.reading as NonNullable<Finding["reading"]>;
  const answer = verdictOn(reading, flow.limits, event.at) ?? "unclear";
  return foundText(event.turn, { answer, reading, at: event.at }, flow, texts);
}
