import type { Journal, LogEvent, Session } from "../session/index.ts";
import type { Actions, Texts, Turn, View } from "../turn/index.ts";
import type { WhenIdle } from "./ahead.ts";
import type { Exclusive } from "./exclusive.ts";
import type { Keeping } from "./keeping.ts";
import type { Load } from "./when-loaded.ts";

/** What surrounds a session: texts, storage, a clock, and who wants to see the result. */
export type Surroundings = Omit<Keeping, "newId"> & {
  /** One writer at a time; without it only the compare before each write. */
  exclusively?: Exclusive;
  newId?: Keeping["newId"];
  /** Without it every scenario is loaded. */
  load?: Load;
  /** Told of the few scenarios that the opening can still lead to. */
  nearing?: (scenarios: string[]) => Promise<unknown>;
  /** Told of the session that is shown, each time. */
  shown?: (session: Session) => void;
  /** Without it nothing is worked out before it is asked for. */
  whenIdle?: WhenIdle;
  /** Is given turns that may come next. */
  rehearse?: (turn: Turn) => void;
  /** Whether the shop has a list of parts that a model code could be looked up in; without it there is one. */
  canLookUp?: () => boolean;
  texts: Texts;
  show(view: View): void;
  /** Told once, when a person's own act (not a reload) has led to an ending. */
  ended(session: Session): void;
};

/** Empties what lies beside a session in this browser. Returns what brings it back. */
export type ClearBeside = () => () => void;

export type Controller = {
  actions: Actions;
  /** The model that the session is about; null where none was named. */
  about(): string | null;
  /** As it was last written or read. */
  journal(): Journal;
  /** Goes on with this check once another question is due, if the chart allows it then; nothing of it is written. */
  lookNext(check: string): void;
  /** Forgets this search and those set aside, here and in other tabs, with what `clear` empties; not at a stop. */
  forget(clear: ClearBeside): void;
  /** Takes answers that were given before it was there, with their own times, as far as they fit; true for all. */
  takeEarly(events: LogEvent[]): Promise<boolean>;
  /** Looks at the clock and at what other tabs have done: a wait may be over, somebody may have gone on elsewhere. */
  tick(): void;
  /** Goes where another tab, or another panel of this page, has gone since. */
  follow(): void;
  /** The page was brought back as it was left: an interruption like a reload. */
  comeBack(): void;
  /** Says, or no longer says, that there is no connection. */
  setOffline(isOffline: boolean): void;
};
