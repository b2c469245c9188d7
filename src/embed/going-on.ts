import { isStopped, type Journal, type Session } from "../session/index.ts";
import type { Notice } from "../turn/index.ts";
import type { Keeper } from "./keeper.ts";
import type { ClearBeside, Surroundings } from "./surroundings.ts";

type Around = Pick<Surroundings, "store" | "door"> & {
  keeper: Keeper;
  move(next: Session, before?: Session, told?: Notice["id"][]): void;
  show(): void;
};

/** What goes on with a search that is not in use: one that was set aside, or one that was forgotten a moment ago. */
export function createGoingOn({ keeper, store, door, move, show }: Around) {
  /** In memory alone, until something else is done. */
  let forgotten: { journal: Journal; aside: unknown[]; bringBack(): void } | null = null;
  return {
    /** Another screen stands: what can't be brought back from it any more is let go of. */
    look(): void {
      if (!keeper.notices.includes("forgotten")) forgotten = null;
    },
    /** Forgets the search in use, those that were set aside, and what lies beside; a stop is no search, and stands. */
    forget(clear: ClearBeside): void {
      keeper.follow();
      if (isStopped(keeper.session)) {
        show();
        return;
      }
      const lost = { journal: keeper.journal, aside: store.readAside() };
      const before = keeper.session;
      const bringBack = clear();
      store.clear();
      const begun = keeper.begin();
      keeper.notices = [];
      move(begun, before, ["forgotten"]);
      forgotten = { ...lost, bringBack };
    },
    goOn(): void {
      const [newest, ...others] = forgotten ? [forgotten.journal, ...forgotten.aside] : store.readAside();
      const kept = door().parseJournal(newest);
      // What was set aside leads out of no stop.
      if (!kept || isStopped(keeper.session)) {
        show();
        return;
      }
      const undone = forgotten;
      move(keeper.goOnWith(kept, others), keeper.session, undone ? [] : ["welcome-back"]);
      undone?.bringBack();
    },
  };
}
