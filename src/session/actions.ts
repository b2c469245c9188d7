import type { Reading } from "../measurement/index.ts";
import type { FittedPart, FoundModel, Plate } from "./lookups.ts";
import type { Line, Notice, Turn } from "./turn.ts";

/** What a screen may ask for. Each is answered by a new view; a stale `turn` (a double tap) changes nothing. */
export type Actions = {
  answer(turn: string, answer: string): void;
  /** `items` are the ids ticked; the session refuses unless all are there. */
  confirmGate(turn: string, items: string[]): void;
  measure(turn: string, reading: Reading): void;
  /** A code the person has confirmed on screen, or null for "I can't find it"; `typed` is kept for the shop's help. */
  giveModel(turn: string, code: string | null, typed: string): void;
  /** Goes back to line `index` and drops what was answered after it. */
  change(index: number): void;
  restart(): void;
  /** Goes on with the session that was set aside; the one on screen is set aside in its place. */
  goOn(): void;
  reportDanger(danger: string): void;
  askForHelp(): void;
  reportIce(): void;
};

/** What a screen may look up. Each promise rejects with a Problem-like Error when the catalogue is missing or broken. */
export type Services = {
  findModel(typed: string): Promise<FoundModel>;
  /** `plate`: what else was read off the plate, where the part depends on it. */
  partFor(code: string, kind: string, plate?: Plate): Promise<FittedPart>;
  /**
   * Tells the host page; resolves when it answered 'added', rejects when it answered 'failed'. `variant` and `serial`
   * are there where the part was found by them.
   */
  addToBasket(part: {
    number: string;
    name: string;
    model: string;
    variant?: string;
    serial?: string;
  }): Promise<void>;
  /** RFC 3339 with the local offset. */
  now(): string;
  /** Keeps the screen awake while a test runs; resolves to a release function, harmless where unsupported. */
  keepAwake(): Promise<() => void>;
  /** A short sound and vibration, harmless where unsupported. */
  signal(kind: "tick" | "end"): void;
  shopHelp: { name: string; link: string | null };
};

/** Everything a screen draws. */
export type View = {
  turn: Turn | null;
  lines: Line[];
  notices: Notice[];
  dangers: { id: string; text: string }[];
  /** The ways out that the chart takes now; starting again is always one. */
  ways: ("danger" | "ice" | "help")[];
};

/** Looks up a text of locales/ in the reader's language. */
export type Texts = (key: string, values?: Record<string, string | number>) => string;
