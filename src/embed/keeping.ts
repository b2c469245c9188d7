import type { Feed, Guide } from "../session/index.ts";
import type { Brought } from "./fragment.ts";
import type { LogStore } from "./log-store.ts";
import type { Door } from "./missing.ts";
import type { StopMark } from "./stop-mark.ts";

/** Where a session is kept, and what is asked of it when it is come back to. */
export type Keeping = {
  guide: Guide;
  store: LogStore;
  /** Checks what was kept. @throws DoorMissing where that is not loaded yet */
  door(): Door;
  /** The mark that stops this session in every tab; it lies apart from the journal. */
  stop: { read(): StopMark | null; keep(mark: StopMark): void; clear(): void };
  /** A short name that no other write has. */
  newId(): string;
  /** The model that the page is about. */
  model: string | null;
  now(): string;
  /** Told of each journal once it is kept, with the entries that were added to it here. */
  added?: Parameters<Feed["subscribe"]>[0];
  /** What the page's address has brought. */
  brought?: Brought;
};
