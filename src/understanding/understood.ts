import type { InstrumentName } from "../instruments/index.ts";
import type { Region } from "../measuring/index.ts";
import type { Entries } from "./readings/index.ts";

/** An answer of a turn, by their ids. */
export type Fact = { turn: string; answer: string };

/** What a sentence may mean. */
export type Understood =
  /** A way out to offer before all else; `danger` is a kind of `opening.danger`. `sure`: words and weights agree. */
  | { kind: "danger"; danger: string; sure: boolean }
  /** An answer of this turn. `sure`: it is the answer's own wording, and may be taken without asking back. */
  | { kind: "answer"; turn: string; answer: string; sure: boolean }
  /** Entries for this turn's instrument, by the names under which its form keeps them. */
  | { kind: "reading"; instrument: InstrumentName; entries: Entries }
  /** Answers of other turns, one a turn. */
  | { kind: "facts"; facts: Fact[] }
  /** A side question; its answer is `asides.<entry>`. */
  | { kind: "question"; entry: string }
  /** A model code as the given function found it. */
  | { kind: "model"; code: string }
  | { kind: "nothing" };

/** Where a sentence is typed. */
export type Context = {
  /** `check.turn`. */
  turn: string;
  /** Its answers as it shows them, those that every turn has among them. */
  answers: readonly { id: string; text: string }[];
  instrument: InstrumentName | null;
  /** Where the instrument is used; null where there is none. */
  region: Pick<Region, "units" | "date-order"> | null;
  /** 'YYYY-MM-DD', the person's own day. */
  today: string;
  /** Whether an answer of another turn may be recorded; all may where it is left out. */
  isOpen?(fact: Fact): boolean;
  /** The model that a code names, or null. It is asked for words that look like codes alone. */
  findModel?(code: string): string | null;
};
