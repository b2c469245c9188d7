import { createFile } from "./later-file.ts";
import { type Door, DoorMissing } from "./missing.ts";

const load = createFile<Door>(
  "door",
  () => import("./door.ts"),
  (file) => Boolean(file.parseJournal && file.parseBeside),
);
/** Kept for as long as the page lives. */
let door: Door | null = null;

/** Loads the code that checks what was kept. @throws Error where it does not come; it is asked for again the next time */
export async function bringDoor(): Promise<void> {
  door = await load();
}

/** The code that checks what was kept. @throws DoorMissing where it is not loaded yet */
export function openDoor(): Door {
  if (!door) throw new DoorMissing();
  return door;
}
