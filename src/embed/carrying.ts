import type { Guide } from "../session/index.ts";
import type { Draft, Services, Texts } from "../turn/index.ts";
import { localNow } from "./clock.ts";
import { type Brought, carriedIn } from "./fragment.ts";
import { createFile } from "./later-file.ts";
import type { LogStore } from "./log-store.ts";
import type { Missing } from "./missing.ts";
import { openDoor } from "./open-door.ts";
import type { Controller } from "./surroundings.ts";

/** What makes a link, and reads one. */
const getCarry = createFile<typeof import("./carry.ts")>(
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

type Around = {
  controller: Controller;
  store: LogStore;
  draft: Draft;
  guide: Guide;
  texts: Texts;
  load(missing: Missing): Promise<void>;
  /** The turn that is shown. */
  turn(): string;
};

/** What takes a session along: a link to another device, a page for whoever takes over. */
export function takingAlong({
  controller,
  store,
  draft,
  turn,
  ...means
}: Around): Pick<Services, "carry" | "handover"> {
  return {
    carry: async () => (await getCarry()).linkOf(controller.journal(), location.href),
    handover: async (of) => {
      const isShown = of === "shown";
      const journal = isShown ? controller.journal() : openDoor().parseJournal(store.readAside()[0]);
      if (!journal) throw new Error("Nothing was brought");
      const { variant, serial } = isShown ? draft.read(turn()) : {};
      return (await getCarry()).sumUp(journal, { ...means, now: localNow(), plate: { variant, serial } });
    },
  };
}

/** Where such a link is opened in a tab that has the page already, the page is loaded again: it keeps all that was said. */
export function watchLinks(): () => void {
  const look = () => carriedIn(location.hash) !== null && location.reload();
  addEventListener("hashchange", look);
  return () => removeEventListener("hashchange", look);
}
