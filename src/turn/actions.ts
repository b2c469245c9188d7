import type { Reading, Texts } from "../instruments/index.ts";
import type { Told } from "../session/index.ts";
import type { Aside, AsideAbout, Context, Fact, Understood } from "../understanding/index.ts";
import type { Care } from "./care.ts";
import type { Live } from "./live.ts";
import type { FoundModel, FoundPart, Plate } from "./lookups.ts";
import type { Handover, Line, Notice, Turn } from "./turn.ts";

/** What a screen may ask for. Each is answered by a new view; a stale `turn` (a double tap) changes nothing. */
export type Actions = {
  /** `words`: what was typed, where that was taken as this answer; likewise of a reading. */
  answer(turn: string, answer: string, words?: string): void;
  /** `items` are the ids ticked; the session refuses unless all are there. */
  confirmGate(turn: string, items: string[]): void;
  measure(turn: string, reading: Reading, words?: string): void;
  /** A code the person has confirmed on screen, or null for "I can't find it"; `typed` is kept for the shop's help. */
  giveModel(turn: string, code: string | null, typed: string): void;
  /** Keeps what was said unasked: what is confirmed of it is given as answers where their turn comes up, and are not asked again. */
  tell(told: Told): void;
  /** Goes back to line `index`; what was answered after it is kept where it still fits. */
  change(index: number): void;
  /** Goes back to the question for the model code, if it was asked, to type another one. */
  retypeModel(): void;
  restart(): void;
  /** Goes on with the session that was set aside; the one on screen is set aside in its place. */
  goOn(): void;
  reportDanger(danger: string): void;
  askForHelp(): void;
  reportIce(): void;
  /** It was not over after all: the search goes on. */
  reportTrouble(): void;
};

/** A link that opens the session elsewhere, and what of it somebody typed themselves. */
export type Carried = {
  link: string;
  /** The link as the rows of a QR code, true for dark; null where it is too long for one. */
  code: boolean[][] | null;
  words: string[];
};

/** Actions that all do the same: they tell what was asked for. */
export function createActions(act: (name: keyof Actions, given: never[]) => void): Actions {
  // By their names, a line less for each in the first file; the compiler says which is missing.
  const all: Record<keyof Actions, unknown> = {
    answer: 0,
    confirmGate: 0,
    measure: 0,
    giveModel: 0,
    tell: 0,
    change: 0,
    retypeModel: 0,
    restart: 0,
    goOn: 0,
    reportDanger: 0,
    askForHelp: 0,
    reportIce: 0,
    reportTrouble: 0,
  };
  for (const name of Object.keys(all) as (keyof Actions)[])
    all[name] = (...given: never[]) => act(name, given);
  return all as Actions;
}

/** A part for the basket; `variant` and `serial` are there where the part was found by them. */
export type BasketPart = {
  number: string;
  name: string;
  model: string;
  variant?: string;
  serial?: string;
};

/** `silent`: the host page was asked and has not answered in time; the part may be in its basket or not. */
export type BasketState = "new" | "adding" | "silent" | "added" | "failed";

/** The host page's basket, as far as it was asked for parts. */
export type Basket = {
  stateOf(part: BasketPart): BasketState;
  /** Asks for a part, unless that is asked for or added already. */
  ask(part: BasketPart): void;
  /** Asks once more although nothing was answered: for a person who has looked into the basket. */
  askAgain(part: BasketPart): void;
  /** Calls `changed` whenever a state may have changed. Returns a function that ends it. */
  watch(changed: () => void): () => void;
};

/** What was entered at a turn and not answered with yet: it outlives a reload of the page, in this tab alone. */
export type Draft = {
  /** By name, as it was entered; whoever reads it makes sure that it still can be. */
  read(turn: string): Partial<Record<string, string>>;
  keep(turn: string, name: string, entered: string): void;
};

/** The models that a photo may show; even one that was read letter for letter is a near miss, and never taken by itself. */
export type PhotoModels = Extract<FoundModel, { kind: "near" }> & { isPhoto: true };

/** What a photo of the plate needs; `found` hears which models it may show, or null once that holds no longer. */
export type PhotoGiven = {
  texts: Texts;
  find: Services["findModel"];
  found(models: PhotoModels | null): void;
};

/** What a typed sentence means, and what is said to a side question. */
export type Words = {
  understand(sentence: string, context: Context): readonly Understood[];
  /** What of a sentence looks like a model code. */
  codesIn(sentence: string): string[];
  /** An answer of any turn in words; null for one that there is not. */
  said(fact: Fact): { title: string; answer: string } | null;
  /** Null for an entry that there is not. */
  aside(entry: string, about?: AsideAbout): Aside | null;
};

/** What a screen may look up. Each promise rejects with a Problem-like Error when the catalogue is missing or broken. */
export type Services = {
  /** False where the shop has no list of parts: a part is then named by its kind. */
  canLookUp(): boolean;
  /** The model code that the page's tag gives, once: whoever comes back to the question wants to type another. */
  takePageModel(): string | null;
  findModel(typed: string): Promise<FoundModel>;
  /** Draws 'take a photo of the plate' into an element, where the shop serves what reads it; what comes back ends it. */
  showPhoto(place: object, given: PhotoGiven): Promise<(() => void) | null>;
  /** `plate`: what else was read off the plate, where the part depends on it. */
  partFor(code: string, kind: string, plate?: Plate): Promise<FoundPart>;
  basket: Basket;
  draft: Draft;
  /** RFC 3339 with the local offset. */
  now(): string;
  /** Keeps the screen awake while a test runs; resolves to a release function, harmless where unsupported. */
  keepAwake(): Promise<() => void>;
  /** A short sound and vibration, harmless where unsupported; `soon` comes before the first. */
  signal(kind: "soon" | "tick" | "end"): void;
  /** What understands typed sentences, in the reader's language; fetched when it is first asked for, and then kept. */
  words(): Promise<Words>;
  /** What was typed so far and is no answer, in the person's own words, for whoever takes over. */
  said(): string[];
  /** What carries the session to another device. @throws Error where this browser cannot, or too much was said */
  carry(): Promise<Carried>;
  /**
   * Sums up the session that is shown, or the one that a link has brought, as text to read or to hand on.
   * @throws Error where what makes it can't be loaded, or nothing was brought
   */
  handover(of: "shown" | "brought"): Promise<Handover>;
  /** What is said and kept after an ending. @throws Error where that can't be loaded */
  care(): Promise<Care>;
  /** Forgets all answers and what is kept of the machine, here and in other tabs; it can be undone until the next act. */
  forget(): void;
  /** Help by the shop's people; null where the page names no relay. */
  live: Live | null;
  shopHelp: { name: string; link: string | null };
  /** Where the shop's basket is, http or https; null where the page does not say. */
  basketLink: string | null;
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

export type { AsideAbout, Context as TypedContext, Fact, Texts };
