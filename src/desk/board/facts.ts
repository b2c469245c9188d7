import type { Fact, Session } from "../../session/index.ts";
import { type Texts, titleOf } from "../../turn/index.ts";
import { metasIn } from "./chart-checks.ts";

/** An answer that a person may say by voice, in words. */
export type Sayable = Fact & { title: string; text: string };

/**
 * What can be noted as said: answers that last, of questions that are looked at or known. Nothing of a gate, a tap, a wait
 * or a reading is among them, for only the person who stands there can confirm, turn, wait or measure; and no danger, which
 * is reported at once.
 */
export function sayableIn(session: Session, texts: Texts): Sayable[] {
  const { opening } = session.guide;
  const charts = session.chart === opening ? [opening] : [session.chart, opening];
  const metas = charts.flatMap((chart) => [...metasIn(chart.states)]);
  const seen = new Set<string>();
  const { lasting, dangers } = session.flow;
  const lasts = (turn: string) => lasting.includes(turn) || lasting.includes(turn.split(".")[0] ?? "");
  return metas.flatMap(({ kind, turn, gated, answers = [] }) => {
    if (kind !== "choice" || gated || !lasts(turn) || seen.has(turn)) return [];
    seen.add(turn);
    return answers.flatMap((answer): Sayable[] => {
      if (dangers.includes(answer)) return [];
      const text = texts(`checks.${turn}.answers.${answer}`);
      const title = texts(`checks.${turn}.ask`) || titleOf(turn, texts);
      return text ? [{ turn, answer, title, text }] : [];
    });
  });
}

/** Those in which every typed word begins some word, the order kept. */
export function matching(facts: readonly Sayable[], typed: string): Sayable[] {
  const wanted = wordsOf(typed);
  if (!wanted[0]) return [];
  return facts.filter(({ title, text }) => {
    const words = wordsOf(`${title} ${text}`);
    return wanted.every((one) => words.some((word) => word.startsWith(one)));
  });
}

const wordsOf = (text: string) => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
