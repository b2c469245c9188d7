import type { Draft, Placed, Stored } from "../protocol/room/index.ts";

/** Which room a code opens, and which entry of its log had made it. */
export type CodeOf = { room: string; seq: number };

/** Is told of each entry once it is kept, in the order of its room. */
export type Follower = (room: string, stored: Stored) => void;

/**
 * Where rooms are kept. What a promise has resolved for outlives the relay. Several relays may share one store if it
 * numbers, appends and tells in one step; then each of them follows it.
 */
export type Store = {
  /** Numbers a draft once: whoever says it again gets the entry of the first time. */
  append(room: string, draft: Draft, at: number): Promise<Placed>;
  /** All of a room after this number, in order; nothing where the room is unknown. */
  after(room: string, seq: number): Promise<Stored[]>;
  /** All rooms that are kept. */
  rooms(): Promise<string[]>;
  /** Keeps the digest of a code. */
  keepCode(sealed: string, of: CodeOf, until: number): Promise<void>;
  /** Takes a code out: it is found once, by one. */
  takeCode(sealed: string, now: number): Promise<CodeOf | null>;
  /** @returns ends it */
  follow(follower: Follower): () => void;
  /** Removes a room with all that was said in it. */
  forget(room: string): Promise<void>;
  /** Removes what is forgotten from the medium as well, as far as that is not done. */
  tidy(now: number): Promise<void>;
  /** Whether it still keeps what it is given. */
  isWell(): boolean;
  /** Ends it after all that is on its way was kept. */
  close(): Promise<void>;
};
