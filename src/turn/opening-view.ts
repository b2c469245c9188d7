import type { View } from "./actions.ts";
import type { Answer, Line, Turn } from "./turn.ts";

/*
 * The opening as the first file draws it, from data that was compiled for one language. That file has to be small:
 * nothing is imported here but types.
 */

/** What the first file knows by heart in one language: the opening, every stop, and the panel's own texts. */
export type FirstTurn = {
  /** BCP 47 tag. */
  language: string;
  texts: Record<string, string>;
  /** The turn that is shown before all others, and answered ahead of the first; empty where there is none. */
  greets: string;
  /** The turns of the opening by id, the first one first. */
  turns: Record<string, OpeningTurn>;
  /** What all of them have alike. */
  alike: Partial<Turn>;
  ways: View["ways"];
  /** Ids of answers to the first question that report a danger. */
  dangers: string[];
  /** What every stop has in place of the first question's. */
  stop: Partial<Turn>;
  /** Headline and lines of each danger, of `not-sure`, and of `general` for any other. */
  stops: Record<string, string[]>;
};

/** One turn of the opening, as short as it can be said. */
export type OpeningTurn = {
  /** Its name in a folded line. */
  title: string;
  heading: string;
  body: string[];
  note?: string;
  why?: string;
  /**
   * Id, text, and where it leads: a turn of the opening, `!` and a danger where it stops, nothing where only the
   * engine goes on. Last, how it reads in a folded line, where that differs from the text.
   */
  answers: [id: string, text: string, lead?: string, said?: string][];
  /** What else is otherwise than in all of them. */
  more?: Partial<Turn>;
};

/** An answer that was given before the engine was there, with its own time (RFC 3339). */
export type Given = { type: "answered"; turn: string; answer: string; at: string };

/** Where an answer in the opening leads, as `answers` has it; undefined where only the engine goes on. */
export function leadOf({ turns }: FirstTurn, turn: string, answer: string): string | undefined {
  return (Object.hasOwn(turns, turn) && turns[turn]?.answers.find(([id]) => id === answer)?.[2]) || undefined;
}

/** Where all answers so far lead, as `leadOf` has it: what greets was answered before the first turn, and is not asked again. */
export function leadAfter(first: FirstTurn, given: readonly Given[]): string | undefined {
  const { greets, turns } = first;
  const [{ turn, answer } = { turn: "", answer: "" }] = given;
  const last = given.at(-1);
  const [start = ""] = Object.keys(turns);
  if (!last) return greets || start;
  if (last.turn === greets && !given[1]) return start;
  const lead = leadOf(first, last.turn, last.answer);
  return lead === greets && turn === greets ? leadOf(first, turn, answer) : lead;
}

/** The opening after these answers, each given where the one before had led. The last may wait for the engine. */
export function openingView(first: FirstTurn, given: readonly Given[]): View {
  const { turns, ways, dangers } = first;
  const last = given.at(-1);
  const next = leadAfter(first, given);
  const [start = ""] = Object.keys(turns);
  const told = next ? given : given.slice(0, -1);
  return {
    turn: turnFrom(first, next ?? last?.turn ?? start),
    lines: told.map(({ turn, answer }, index): Line => {
      const { title = "", answers } = turns[turn] ?? {};
      const [, text = "", , said = text] = answers?.find(([id]) => id === answer) ?? [];
      const drops = told.length - index - 1;
      return { index, turn, title, answer: said, drops, canChange: true };
    }),
    notices: [],
    dangers: dangers.map((id) => ({
      id,
      text: turns[start]?.answers.find(([answer]) => answer === id)?.[1] ?? "",
    })),
    ways,
  };
}

/** What is shown where a danger was reported; one that is unknown gets the general advice. */
export function stopView(first: FirstTurn, danger: string): View {
  const { stop, stops, turns } = first;
  const view = openingView(first, []);
  const [start = ""] = Object.keys(turns);
  const [heading = "", ...body] = stops[Object.hasOwn(stops, danger) ? danger : "general"] ?? [];
  return { ...view, turn: { ...turnFrom(first, start), ...stop, heading, body }, ways: [] };
}

/** A turn of the opening as a screen draws it. */
export function turnFrom({ turns, alike }: Pick<FirstTurn, "turns" | "alike">, turn: string): Turn {
  const { title: _, answers = [], more, ...words } = turns[turn] ?? {};
  return {
    ...alike,
    turn,
    note: "",
    why: "",
    ...words,
    answers: answers.map(([id, text]) => ({ id, text, role: id === "not-sure" ? id : "own" }) as Answer),
    ...more,
  } as Turn;
}
