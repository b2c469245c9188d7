import { greetingOf, type Held, isStopped, metaOf, type Session } from "../session/index.ts";
import type { Texts, View } from "./actions.ts";
import { foundText, titleOf } from "./findings.ts";
import { lineOf } from "./own-words.ts";
import type { Turn } from "./turn.ts";
import { turnOf } from "./turn-of.ts";

/**
 * What is drawn before anything was answered: the turn that greets; once it was answered, the questions about danger,
 * with the complaint as the thread's first line. At any later time the view as it is.
 * @param held what was told so far
 * @param isAgain somebody wants to say it anew
 */
export function greetedView(
  view: View,
  session: Session,
  held: readonly Held[],
  texts: Texts,
  isAgain = false,
): View {
  const { flow, log, adviser } = session;
  if (adviser || isStopped(session) || view.turn?.turn !== metaOf(session).turn) return view;
  const told = held.find(({ event }) => event.turn === flow.greets)?.event;
  const greeting = greetingOf(session);
  if (greeting && (isAgain || !told)) return { ...view, turn: greet(view.turn, greeting, texts) };
  const isAnswered = log.events.some((event) => "turn" in event && event.turn === flow.greets);
  if (isAnswered || told?.type !== "answered") return view;
  const line = {
    // Whoever changes it comes to the first question, and from there to this one.
    index: 0,
    turn: told.turn,
    title: titleOf(told.turn, texts),
    ...lineOf(told, foundText(told.turn, told, flow, texts), texts),
    drops: view.lines.length,
    canChange: true,
  };
  return { ...view, lines: [line, ...view.lines] };
}

function greet(turn: Turn, greeting: Session, texts: Texts): Turn {
  const { turn: id, body, why, note, answers } = turnOf(greeting, texts, greeting.log.started);
  return {
    ...turn,
    turn: id,
    heading: texts("thread.hello"),
    body,
    why,
    note: [texts("thread.danger-first"), note].filter(Boolean).join(" "),
    answers,
  };
}
