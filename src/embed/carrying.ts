import { type Brought, carriedIn } from "./fragment.ts";
import { createFile } from "./later-file.ts";
import { openDoor } from "./open-door.ts";

/** What makes a link, and reads one. */
export const getCarry = createFile<typeof import("./carry.ts")>(
  "carry",
  () => import("./carry.ts"),
  (file) => Boolean(file.linkOf),
);

/**
 * Reads what the page's address carries, which then no longer has it. Where that cannot be read now the address stays, to
 * be opened again. Never throws; the door has to be there.
 */
export async function takeCarried(text: string): Promise<Brought> {
  try {
    const journal = await (await getCarry()).broughtBy(text, openDoor());
    history.replaceState(history.state, "", location.pathname + location.search);
    return journal ?? "broken";
  } catch (problem) {
    console.error("<fridgeside-panel>: what the link carries could not be read.", problem);
    return null;
  }
}

/** Where such a link is opened in a tab that has the page already, the page is loaded again: it keeps all that was said. */
export function watchLinks(): () => void {
  const look = () => carriedIn(location.hash) !== null && location.reload();
  addEventListener("hashchange", look);
  return () => removeEventListener("hashchange", look);
}
