import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Actions, View } from "../../session/index.ts";

/** A tap that changed nothing (refused, or the engine is still on its way) frees the buttons after this. */
const RELEASE_MS = 4000;

/**
 * Sends one act for each view, for while the engine is on its way a tap changes nothing yet; but a danger is always
 * sent, whatever was tapped before it. (What a double tap does is settled before this, in double-tap.ts.) Moves focus
 * to the new turn's heading once a tap has led there.
 * Never on load: a shop's page must not jump because a panel arrived in it.
 */
export function useOneTap(view: View, actions: Actions) {
  // A stop that the first file draws knows no lines; the engine's is the same.
  const isStop = view.turn?.ending?.outcome === "stopped";
  const place = isStop ? "stopped" : `${view.turn?.turn}/${view.lines.length}`;
  const [sent, setSent] = useState<View | null>(null);
  // State comes too late for a second act within one task; the ref knows at once.
  const locked = useRef<View | null>(null);
  const led = useRef(false);
  const heading = useRef<HTMLHeadingElement>(null);

  useLayoutEffect(() => {
    if (!led.current || !heading.current) return;
    led.current = false;
    showHeading(heading.current);
  }, [place]);

  useEffect(() => {
    if (!sent) return;
    const timer = setTimeout(() => {
      locked.current = null;
      setSent(null);
    }, RELEASE_MS);
    return () => clearTimeout(timer);
  }, [sent]);

  const once = new Proxy(actions, {
    get:
      (all, name: keyof Actions) =>
      (...given: never[]) => {
        if (locked.current === view && !isDanger(view, name, given)) return;
        locked.current = view;
        led.current = true;
        setSent(view);
        (all[name] as (...given: never[]) => void)(...given);
      },
  });
  return { actions: once, busy: sent === view, heading, place };
}

/** The first question offers the dangers as its answers, by the same ids as the footer. */
function isDanger({ dangers }: View, name: keyof Actions, given: unknown[]): boolean {
  return name === "reportDanger" || (name === "answer" && dangers.some(({ id }) => id === given[1]));
}

function showHeading(heading: HTMLElement): void {
  heading.focus({ preventScroll: true });
  const { top } = heading.getBoundingClientRect();
  // 64: a shop's own bar often sticks to the top of its page.
  if (top < 64 || top > innerHeight / 2) heading.scrollIntoView({ block: "start" });
}
