import { rankMoves } from "../../advice/index.ts";
import type { Said, SharedRoom, Suggestion } from "../../cobrowse/client/index.ts";
import { memoryOf, metaOf, type Session } from "../../session/index.ts";
import { type Answer, type Texts, type Turn, titleOf } from "../../turn/index.ts";
import { causeName } from "./causes.ts";
import { subjectOf } from "./subject-of.ts";

/** A check that may be suggested, and what it would tell. */
export type NextCheck = { check: string; name: string; tells: string };

/** So many are offered (judgement: what fits beside the causes). */
const mostNext = 4;

/**
 * Answers of the open turn that may be pointed at or proposed. A gate, a reading and a wait have none: only whoever stands
 * there can confirm, measure or wait.
 */
export function choicesAt(turn: Turn | null): Answer[] {
  return turn?.kind === "choice" ? turn.answers : [];
}

/** The checks that are worth most next, by the adviser's own measure; none in the opening and at an ending. */
export function nextChecksOf(session: Session, texts: Texts): NextCheck[] {
  const subject = subjectOf(session);
  const { check: here, outcome } = metaOf(session);
  if (!subject || outcome) return [];
  const memory = memoryOf(session);
  const { check: first = null } = session.adviser?.advise(memory) ?? {};
  return rankMoves(subject, memory, first)
    .filter(({ check }) => check !== here)
    .slice(0, mostNext)
    .map(({ check, minutes, splits }) => {
      const count = Math.max(1, Math.round(minutes));
      const pair = splits?.map((cause) => causeName(cause, texts));
      const [a, b] = pair ?? [];
      return {
        check,
        name: texts(`checks.${check}.name`),
        tells: a && b ? texts("desk.next.tells", { a, b, count }) : texts("desk.next.minutes", { count }),
      };
    });
}

/** The answer that an agent's latest word points at, where its turn is still open and nobody has said anything about it since. */
export function pointedAt(room: SharedRoom, me: string | null, turn: Turn | null): Answer | null {
  const last = room.said.findLast(
    (one) => one.by === "agent" && one.from === me && one.suggestion.kind === "point",
  );
  if (last?.by !== "agent" || last.suggestion.kind !== "point") return null;
  const { turn: of, answer } = last.suggestion;
  return (turn?.turn === of && choicesAt(turn).find(({ id }) => id === answer)) || null;
}

/** A suggestion in words, as it stands in the conversation. */
export function suggestionText(suggestion: Suggestion, texts: Texts): { what: string; why: string } {
  const answerOf = (turn: string, answer: string) =>
    texts(`checks.${turn}.answers.${answer}`) || texts(`standing.${answer}`);
  const why = "why" in suggestion ? suggestion.why : "";
  switch (suggestion.kind) {
    case "line":
      return { what: suggestion.text, why };
    case "point":
      return {
        what: texts("desk.said.point", { answer: answerOf(suggestion.turn, suggestion.answer) }),
        why,
      };
    case "correct":
      return { what: texts("desk.said.correct", { model: suggestion.model }), why };
    case "told": {
      const facts = suggestion.facts.map(({ turn, answer }) =>
        texts("desk.found", { title: titleOf(turn, texts), answer: answerOf(turn, answer) }),
      );
      return { what: texts("desk.said.told", { facts: facts.join(". ") }), why };
    }
    default:
      if ("answer" in suggestion)
        return {
          what: texts("desk.said.answer", { answer: answerOf(suggestion.turn, suggestion.answer) }),
          why,
        };
      if ("check" in suggestion)
        return { what: texts("desk.said.check", { check: texts(`checks.${suggestion.check}.name`) }), why };
      return { what: texts(`desk.said.ending.${suggestion.ending}`), why };
  }
}

/** What became of something that an agent sent, as a key of the desk's texts. */
export function fateOf(said: Said & { by: "agent" }, open: string | undefined): string {
  if (said.is) return `desk.fate.${said.is}`;
  const { suggestion } = said;
  if (suggestion.kind === "line") return "desk.fate.sent";
  return "turn" in suggestion && open !== undefined && suggestion.turn !== open
    ? "desk.fate.gone"
    : "desk.fate.open";
}
