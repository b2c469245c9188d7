import { type Actions, createActions, type View } from "../../turn/index.ts";

/** A tap that changed nothing (refused, or the engine is still on its way) frees the buttons after this. */
const RELEASE_MS = 4000;

/**
 * A tap shows at once, for its button is `:active`; what takes longer than this (milliseconds) is said by buttons that
 * fade. Most taps lead on sooner, and drawing the panel twice for them would make each later by a frame.
 */
const PATIENCE_MS = 100;

/**
 * Sends one act for each view, for while the engine is on its way a tap changes nothing yet; but a danger is always
 * sent, whatever was tapped before it. (What a double tap does is settled before this, in double-tap.ts.) Moves focus
 * to the new turn's heading once a tap has led there.
 * Never on load: a shop's page must not jump because a panel arrived in it.
 *
 * Its panel is a class, as all of the first file's components are: hooks weigh nearly a kilobyte of it.
 */
export class OneTap {
  /** Draws the panel again. */
  readonly #draw: () => void;
  #sent: View | null = null;
  /** A tap was sent that has not led to another turn yet. */
  hasLed = false;
  #release: ReturnType<typeof setTimeout> | undefined;
  #fade: ReturnType<typeof setTimeout> | undefined;
  #heading: HTMLElement | null = null;

  constructor(draw: () => void) {
    this.#draw = draw;
  }

  /** For the heading of the turn. */
  readonly heading = (heading: HTMLElement | null) => {
    this.#heading = heading;
  };

  /** True from a tap until the next view, or until the buttons are freed. */
  isBusy(view: View): boolean {
    return this.#sent === view;
  }

  /** The actions of what is drawn now: those of an earlier view stay locked to it. */
  actionsOf(view: View, actions: Actions): Actions {
    return createActions((name, given) => {
      if (this.#sent === view && !isDanger(view, name, given)) return;
      this.#sent = view;
      this.hasLed = true;
      this.end();
      this.#fade = setTimeout(this.#draw, PATIENCE_MS);
      this.#release = setTimeout(() => {
        this.#sent = null;
        this.#draw();
      }, RELEASE_MS);
      (actions[name] as (...given: never[]) => void)(...given);
    });
  }

  /**
   * Before another turn is drawn: a browser that has to take the focused button away lays out the whole page first,
   * with the old turn gone and the new one not there yet.
   */
  leave(): void {
    const turn = this.#heading?.parentElement;
    const { activeElement } = (turn?.getRootNode() ?? {}) as Partial<DocumentOrShadowRoot>;
    if (activeElement && turn?.contains(activeElement)) (activeElement as HTMLElement).blur();
  }

  /** Once another turn has been drawn. */
  arrive(): void {
    clearTimeout(this.#fade);
    const heading = this.#heading;
    // In the frame that lays the turn out anyway, and so in another task than the one that has made it.
    if (this.hasLed && heading) requestAnimationFrame(() => showHeading(heading));
    this.hasLed = false;
  }

  end(): void {
    clearTimeout(this.#fade);
    clearTimeout(this.#release);
  }
}

/** Which turn is drawn. A stop that the first file draws knows no lines; the engine's is the same. */
export function placeOf({ turn, lines }: View): string {
  return turn?.ending?.outcome === "stopped" ? "stopped" : `${turn?.turn}/${lines.length}`;
}

/** The first question offers the dangers as its answers, by the same ids as the footer. */
function isDanger({ dangers }: View, name: keyof Actions, given: unknown[]): boolean {
  return name === "reportDanger" || (name === "answer" && dangers.some(({ id }) => id === given[1]));
}

function showHeading(heading: HTMLElement): void {
  heading.focus({ preventScroll: true });
  const { top } = heading.getBoundingClientRect();
  // 64: a shop's own bar often sticks to the top of its page. Lower down, its answers would cover what it says.
  if (top < 64 || top > innerHeight / 3) heading.scrollIntoView({ block: "start" });
}
