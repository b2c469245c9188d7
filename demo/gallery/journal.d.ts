import type { Journal } from "../../src/session/index.ts";

/** What is done on a page to come from a journal to a place: names of parts of the panel's markup are CSS selectors. */
export type Act =
  /** Ticks every line of a gate and confirms. */
  | { do: "confirm" }
  /** Taps an answer, by its place among those of the turn. */
  | { do: "answer"; place: number }
  | { do: "press"; what: string }
  | { do: "type"; what: string; words: string }
  /** Another tab goes on to the step of this number. */
  | { do: "elsewhere"; after: number };

/** A turn, an ending, or another state of the panel. */
export type Place = {
  /** Its turn, and what is special about it behind a blank: a cause, a danger, a state. */
  name: string;
  /** The last step that leads there; null before the first. */
  after: number | null;
  acts?: Act[];
  /** The browser keeps nothing. */
  full?: true;
  /** It doesn't let the page look whether it has kept anything. */
  denied?: true;
  offline?: true;
  /** The fragment of the address that the page was opened by. */
  fragment?: string;
  /** Live help is offered, and its relay never answers. */
  relay?: true;
  /** It was left so many minutes ago, where that is not just now. */
  ago?: number;
};

export type Gallery = {
  about: string;
  /** When the first session began, RFC 3339. */
  began: string;
  languages: string[];
  places: Place[];
  /** Each with the number of the step that it comes after, in minutes since the beginning, and an event of a journal. */
  steps: [after: number | null, minute: number, event: Journal["entries"][number]["event"]][];
};

export function stepsTo(
  gallery: Gallery,
  last: number | null,
): { minute: number; event: Journal["entries"][number]["event"] }[];

export function journalAt(gallery: Gallery, last: number | null, now: number): Journal;
