import { greetingOf, type Held, metaOf, type Session } from "../session/index.ts";
import type { Texts, View } from "./actions.ts";
import { foundText, titleOf } from "./findings.ts";
import { turnOf } from "./turn-of.ts";

/**
 * What is drawn before anything was answered: the turn that greets; once it was answered, the question about danger,
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
  const greeting = greetingOf(session);
  if (!greeting || view.turn?.turn !== metaOf(session).turn) return view;
  const { turn, answers, why, ...words } = turnOf(greeting, texts, session.log.started);
  const told = held.find(({ event }) => event.turn === turn)?.event;
  if (told?.type === "answered" && !isAgain) {
    const answer = foundText(turn, told, session.flow, texts);
    const line = { index: 0, turn, title: titleOf(turn, texts), answer, drops: 0, canChange: true };
    return { ...view, lines: [line] };
  }
  const note = [texts("thread.danger-first"), words.note].filter(Boolean).join(" ");
  return {
    ...view,
    turn: { ...view.turn, turn, answers, why, note, heading: texts("thread.hello"), body: words.body },
  };
}
