import type { FridgesideEventName, FridgesideEvents } from "../insight/index.ts";
import type { Entry, Journal } from "../session/index.ts";

/** Something that the page is told. */
export type Happening = {
  [Name in FridgesideEventName]: { name: Name; detail: FridgesideEvents[Name] };
}[FridgesideEventName];

/** What a journal does not say of itself. */
export type Known = {
  /** What the reading of a turn came to. */
  verdictOf(turn: string): string;
  /** Whether a typed model code was looked for and is not in the shop's list. */
  isUnknown(typed: string): boolean;
  /** Answers that report a danger. */
  dangers: readonly string[];
  /** The turn on screen before. */
  turn: string;
};

/**
 * What happened, by the entries that were added to a journal here. Answers that were put back happened before, and are
 * not told again.
 * @param added those entries of the journal, the very objects
 */
export function happeningsOf({ entries }: Journal, added: readonly Entry[], known: Known): Happening[] {
  const isNew = new Set(added);
  const happened: Happening[] = [];
  /** What each turn was answered with since the last new start, and which of them a person has gone back to. */
  let answers = new Map<string, string>();
  let reopened = new Set<string>();
  const turns = new Map<string, string>();
  let isBegun = false;
  let isAgain = false;
  const tell = <Name extends FridgesideEventName>(name: Name, detail: FridgesideEvents[Name]) =>
    happened.push({ name, detail } as Happening);

  for (const entry of entries) {
    const { id, event } = entry;
    const isTold = isNew.has(entry);
    if (event.type === "started-again") {
      [isBegun, isAgain] = [false, true];
      answers = new Map();
      reopened = new Set();
      continue;
    }
    if (event.type === "took-back") {
      const back = event.entries.flatMap((one) => turns.get(one) ?? []);
      for (const turn of back) reopened.add(turn);
      if (isTold && back[0]) tell("fridgeside-back", { turn: back[0], drops: back.length });
      continue;
    }
    if (
      ["session-resumed", "wait-ended", "times-corrected", "prepared-left", "water-left"].includes(event.type)
    )
      continue;
    if (isTold && !isBegun) tell("fridgeside-started", { again: isAgain });
    isBegun = true;
    if (!isTold) note();
    else if (event.type === "told") {
      if (event.facts.length === 0 && !event.model)
        tell("fridgeside-not-found", { what: "sentence", turn: known.turn });
      for (const { turn, answer } of event.facts) answered(turn, answer, answers.has(turn));
      if (event.model) answered("part.model", "given");
      note();
    } else if (event.type === "danger-reported") tell("fridgeside-danger", { danger: event.danger });
    else if (event.type === "help-asked") tell("fridgeside-help-asked", { by: "householder", why: "checks" });
    else if ("turn" in event) {
      if (!event.kept) answered(event.turn, shortOf(event), reopened.has(event.turn));
      if (event.type === "answered" && known.dangers.includes(event.answer))
        tell("fridgeside-danger", { danger: event.answer });
      if (event.type === "measured" && !event.kept)
        tell("fridgeside-reading-taken", {
          turn: event.turn,
          instrument: event.reading.kind,
          verdict: known.verdictOf(event.turn),
        });
      if (event.type === "model-given" && event.code === null && known.isUnknown(event.typed))
        tell("fridgeside-not-found", { what: "model", turn: event.turn });
      note();
    } else answered(known.turn, event.type);

    function answered(turn: string, answer: string, mayDiffer = false): void {
      const { words, heard } = event as { words?: string; heard?: true };
      tell("fridgeside-answered", { turn, answer, how: heard ? "said" : words ? "typed" : "tapped" });
      const said = event.type === "measured" ? JSON.stringify(event.reading) : answer;
      if (mayDiffer && answers.get(turn) !== said) tell("fridgeside-changed", { turn });
    }

    function note(): void {
      if (event.type === "told") for (const { turn, answer } of event.facts) answers.set(turn, answer);
      if (!("turn" in event)) return;
      turns.set(id, event.turn);
      reopened.delete(event.turn);
      answers.set(event.turn, event.type === "measured" ? JSON.stringify(event.reading) : shortOf(event));
    }
  }
  return happened;
}

/** An answer by its id alone. */
function shortOf(event: Extract<Entry["event"], { turn: string }>): string {
  if (event.type === "answered") return event.answer;
  return event.type === "measured" ? "measured" : event.code === null ? "cannot" : "given";
}
