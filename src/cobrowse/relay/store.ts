import type { Brakes, Draft, Placed, Stored } from "../protocol/room/index.ts";

/** Which room a code opens, and which entry of its log had made it. */
export type CodeOf = { room: string; seq: number };

/** What a draft was judged by. */
export type Basis = {
  /** So many entries of the room were known. */
  seen: number;
  /** The instant from which nobody comes back to the room, milliseconds; null where the draft does not change it. */
  until: number | null;
};

/** Is told what becomes of the rooms that a relay watches. */
export type Follower = {
  /** An entry is kept. Of one room they come in their order, without a gap, each once. */
  kept(room: string, stored: Stored): void;
  /** Somebody has sat down at another relay; a place with a lower number is theirs no longer. */
  seated(room: string, peer: string, place: number): void;
  /** The store has no longer what it had told of a room. */
  lost(room: string): void;
};

/** Brakes, wherever they are counted. */
export type StoreBrakes = {
  [Name in keyof Brakes]: (
    ...given: Parameters<Brakes[Name]>
  ) => ReturnType<Brakes[Name]> | Promise<ReturnType<Brakes[Name]>>;
};

/** The store cannot be reached for a while: what was asked for may be done or not, and is asked again. */
export class StoreAway extends Error {
  override name = "StoreAway";
}

/**
 * Where rooms are kept. What a promise has resolved for outlives the relay. Several relays may share one store if it
 * numbers, appends and tells in one step; then each of them watches the rooms that it has lines of.
 */
export type Store = {
  /** Whether other relays have the same rooms, and the store itself ends those that are over. */
  isShared: boolean;
  /** Numbers a draft once: whoever says it again gets the entry of the first time. */
  append(room: string, draft: Draft, at: number, basis: Basis): Promise<Placed>;
  /** All of a room after this number, in order; nothing where the room is unknown. */
  after(room: string, seq: number): Promise<Stored[]>;
  /** All of a room; followers are told from then on of what comes after. */
  watch(room: string): Promise<Stored[]>;
  /** Nobody needs to be told of a room any more. */
  unwatch(room: string): void;
  /** Resolves once followers have been told of all that was kept before in the rooms that are watched. */
  catchUp(room: string): Promise<void>;
  /**
   * Somebody sits down in a room that is watched; followers have been told of all that was kept before.
   * @returns the number of their place, higher than any before, or null where the room is lost
   */
  seat(room: string, peer: string): Promise<number | null>;
  /** The rooms that this process alone has, and has to end. */
  rooms(): Promise<string[]>;
  /** Keeps the digest of a code. */
  keepCode(sealed: string, of: CodeOf, until: number): Promise<void>;
  /** Takes a code out: it is found once, by one. */
  takeCode(sealed: string, now: number): Promise<CodeOf | null>;
  brakes: StoreBrakes;
  /** @returns ends it */
  follow(follower: Follower): () => void;
  /** Removes a room with all that was said in it. */
  forget(room: string): Promise<void>;
  /** Removes what is forgotten from the medium as well, as far as that is not done. */
  tidy(now: number): Promise<void>;
  /** Whether it keeps what it is given now. */
  isWell(): boolean;
  /** Ends it after all that is on its way was kept. */
  close(): Promise<void>;
};
