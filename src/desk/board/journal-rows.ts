import type { Entry, Journal, Session } from "../../session/index.ts";
import { standingOf } from "../../session/index.ts";
import type { Texts } from "../../turn/index.ts";
import { titleOf, wordsOfAnswer } from "../../turn/index.ts";

/** One entry of a journal for a reader: `isBack` was taken back since, `isVoice` was said to the agent and confirmed. */
export type JournalRow = {
  id: string;
  /** RFC 3339, by the householder's clock. */
  at: string;
  title: string;
  answer: string;
  words: string;
  isBack: boolean;
  isVoice: boolean;
};

/** What was said in a conversation, in the order it was written. */
export function journalRowsOf(journal: Journal, session: Session, texts: Texts): JournalRow[] {
  const { ids, held } = standingOf(journal);
  const inForce = new Set([...ids, ...held.map(({ id }) => id)]);
  const told = new Set(held.map(({ id }) => id));
  return journal.entries.flatMap((entry) => {
    const said = saidIn(entry, session, texts);
    if (!said) return [];
    const { id, at, event } = entry;
    const isVoice = "heard" in event && event.heard === true;
    // What was told stays said; its answers are in force once their turn has come.
    const isBack = event.type !== "told" && "turn" in event && !inForce.has(id) && !told.has(id);
    return [{ id, at, ...said, isBack, isVoice }];
  });
}

type Said = Pick<JournalRow, "title" | "answer" | "words">;

function saidIn({ event, at }: Entry, session: Session, texts: Texts): Said | null {
  const happened = (answer = "") => ({ title: texts(`desk.journal.${event.type}`), answer, words: "" });
  if (event.type === "told") {
    const facts = event.facts.map(({ turn, answer }) =>
      texts("desk.found", { title: titleOf(turn, texts), answer: texts(`checks.${turn}.answers.${answer}`) }),
    );
    return { ...happened([...facts, event.model ?? ""].filter(Boolean).join(". ")), words: event.words };
  }
  if ("turn" in event) {
    const { title, answer, words = "" } = wordsOfAnswer({ ...event, at }, session, texts);
    return { title, answer, words };
  }
  if (event.type === "danger-reported")
    return happened(texts(`checks.opening.danger.answers.${event.danger}`));
  const isSaid = ["started-again", "help-asked", "ice-returned", "trouble-returned", "wait-ended"];
  return isSaid.includes(event.type) ? happened() : null;
}
