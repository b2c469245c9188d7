import type { Line, Means, OnLine } from "../cobrowse/client/index.ts";
import type { Journal } from "../session/index.ts";
import type { Live, Texts, View } from "../turn/index.ts";
import type { LivePlace } from "./live-place.ts";

/** What of a panel live help sees, and the one thing that it may ask of it. */
export type LiveAround = {
  journal(): Journal;
  view(): View | null;
  texts: Texts;
  lookNext(check: string): void;
};

/** What a room is opened with; tests have a line, a clock and timers of their own. */
export type LiveMeans = Omit<LiveAround, "lookNext"> & {
  relay: string;
  place: LivePlace;
  emit(name: "joined" | "left", by: string, why: string): void;
  changed(): void;
  dial?: (address: string, on: OnLine) => Line;
  now?: () => number;
  after?: Means["after"];
};

/** A room that was asked for, or come back to. */
export type OpenedLive = Omit<Live, "isOffered" | "ask" | "watch" | "lookNext" | "bringHere"> & {
  /** Another screen is shown: shares what is new, and answers suggestions that are past. */
  look(): void;
  wake(): void;
  /** Hangs up; the room stays as it is. */
  close(): void;
};
