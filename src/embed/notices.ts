import type { Notice } from "../turn/index.ts";
import { putUnreadAside } from "./coming-back.ts";
import type { Keeping } from "./keeping.ts";

type Ids = Notice["id"][];

/** Those that stay until they no longer hold; all others are told once. */
export const lastingOf = (notices: Ids): Ids =>
  notices.filter((id) => id === "memory-only" || id === "offline" || id === "carried");

/** What a link has brought is gone on with, or forgotten. */
export const withoutCarried = (notices: Ids): Ids => notices.filter((id) => id !== "carried");

/** Whether it offers to go on with what was set aside last. */
export const offersAside = (id: Notice["id"]): boolean => id === "set-aside" || id === "carried";

/** Sets aside what a link has brought, in front of all else and once however often the link is opened, and tells of it. */
export function withBrought(notices: Ids, { brought, store }: Pick<Keeping, "brought" | "store">): Ids {
  if (!brought) return notices;
  if (brought === "broken") return [...notices, "link-broken"];
  const isSame = (kept: unknown) => JSON.stringify(kept) === JSON.stringify(brought);
  store.writeAside(store.readAside().filter((kept) => !isSame(kept)));
  putUnreadAside(store, brought);
  return [...notices.filter((id) => id !== "set-aside"), "carried"];
}
