/**
 * A second tap this soon (in milliseconds) is the same tap again. Phones count two touches within 300 ms as a double
 * tap and desktops two clicks within 500 ms (defaults; common practice, no source), yet hands bounce after 330 ms, and
 * two taps half a second apart are both meant: half-way between.
 */
const SOON_MS = 400;

/** And this near, in CSS px: a fingertip's width (common practice, no source). Two boxes ticked quickly lie further apart. */
const NEAR_PX = 40;

/** A tap or click: when it was made, by the event's own clock in milliseconds, and where in the window, in CSS px. */
export type Tap = { at: number; x: number; y: number };

/** Keys have no place in the window: all of them share one, far outside. */
const KEYS = { x: -999, y: -999 };

const NEVER: Tap = { at: Number.NEGATIVE_INFINITY, ...KEYS };

/** True for a tap that comes so soon after the last one, and so near, that it was never meant. */
export function isBounce(last: Tap, next: Tap): boolean {
  return next.at - last.at < SOON_MS && Math.hypot(next.x - last.x, next.y - last.y) < NEAR_PX;
}

/** What a click does something to. A tap beside them all must not keep the next from being heard: it may report a danger. */
const acting = "button,a,label,summary,[type=checkbox],[type=radio]";

/**
 * Handlers for the root of a panel that let the second tap of a double tap do nothing, whatever has come under the
 * finger meanwhile. They go by the events' own time: a slow phone handles the second tap only when the work of the
 * first is done.
 */
export function createTapGuard() {
  let last = NEVER;
  let boxOfLabel: Element | null = null;
  return {
    onClickCapture(event: MouseEvent) {
      const target = (event.target as Element).closest(acting);
      // A click by a script is no finger's.
      if (!target || !event.isTrusted) return;
      // The click on a label makes another on its box: that one belongs to the same tap.
      if (target === boxOfLabel) {
        boxOfLabel = null;
        return;
      }
      const { timeStamp, detail, clientX, clientY } = event;
      const tap = { at: timeStamp, ...(detail ? { x: clientX, y: clientY } : KEYS) };
      const bounced = isBounce(last, tap);
      last = tap;
      boxOfLabel = (!bounced && (target as HTMLLabelElement).control) || null;
      if (!bounced) return;
      event.stopPropagation();
      event.preventDefault();
    },
    onKeyDownCapture(event: KeyboardEvent) {
      if (event.key !== "Enter" && event.key !== " ") last = NEVER;
      // A key held down clicks again and again.
      else if (event.repeat && event.key === "Enter") event.preventDefault();
    },
  };
}
