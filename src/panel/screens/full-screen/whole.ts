import type { Actions, Texts, View } from "../../../turn/index.ts";
import { type BackEntries, createBackEntries } from "./back-entries.ts";
import { type InDialog, openInDialog } from "./in-dialog.ts";

/** Going back in the tab's history is not waited for any longer than this: a page may prevent it. */
const PATIENCE_MS = 2000;

/** What the panel shows now. */
export type Shown = { view: View; actions: Actions; texts: Texts };

/** One panel while it fills the window: the phone's Back takes the last answer back, and closes it at the first question. */
export class Whole {
  #shown: Shown;
  readonly #dialog: InDialog;
  #entries: BackEntries | null = null;
  #isOpen = true;
  /** Times that Back was pressed and no answer has been taken back for yet. */
  #asked = 0;
  readonly #done: (left: Promise<unknown>) => void;

  /** @param done told once it has closed, with what is to be waited for before it may open again */
  constructor(panel: HTMLElement, shown: Shown, done: (left: Promise<unknown>) => void) {
    this.#shown = shown;
    this.#done = done;
    const { texts } = shown;
    const words = {
      title: texts("ui.title"),
      close: texts("thread.full-close"),
      locale: texts("ui.locale"),
      direction: texts("ui.direction"),
    };
    this.#dialog = openInDialog(panel, words, { close: this.close, back: this.#back, closed: this.close });
    try {
      const id = Math.random().toString(36).slice(2);
      this.#entries = createBackEntries(window, id, { back: this.#back, lost: () => this.#end(true) });
      this.#entries.reach(answersIn(shown.view) + 1);
    } catch {
      // A page that may not touch its history has the button and Escape.
      this.#entries = null;
    }
  }

  /** Hears what is shown from now on. */
  heed(shown: Shown): void {
    const [before, now] = [answersIn(this.#shown.view), answersIn(shown.view)];
    const isNew = shown.view !== this.#shown.view;
    this.#shown = shown;
    this.#entries?.look();
    if (!isNew || !this.#isOpen) return;
    if (now > before) this.#entries?.reach(now + 1);
    if (this.#asked === 0) return;
    // What was not taken back is not tried again: the screen has changed under the finger.
    this.#asked = now < before ? this.#asked - 1 : 0;
    if (this.#asked > 0) this.#takeBack();
  }

  /** Puts the panel back into the page. */
  readonly close = (): void => {
    // Nobody may have told yet that the page has moved on.
    this.#entries?.look();
    this.#end(false);
  };

  #end(hasMoved: boolean): void {
    if (!this.#isOpen) return;
    this.#isOpen = false;
    this.#dialog.close(hasMoved);
    this.#done(this.#leave());
  }

  async #leave(): Promise<void> {
    const tooLong = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS));
    const isHome = await this.#entries?.leave(tooLong);
    // Going back, the browser scrolls to where it had been.
    if (isHome) requestAnimationFrame(this.#dialog.goThere);
  }

  readonly #back = (): void => {
    const isLast = this.#entries !== null && this.#entries.left() === 0;
    if (isLast || answersIn(this.#shown.view) <= this.#asked) this.close();
    else if (this.#asked++ === 0) this.#takeBack();
  };

  #takeBack(): void {
    const { view, actions } = this.#shown;
    const last = view.lines.at(-1);
    if (last) actions.change(last.index);
  }
}

/** Answers that can be taken back: none after a stop. */
const answersIn = ({ turn, lines }: View) => (turn?.ending?.outcome === "stopped" ? 0 : lines.length);
