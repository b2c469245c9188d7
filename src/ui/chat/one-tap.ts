import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Actions, View } from "../../session/index.ts";

/** A tap that changed nothing (refused, or the engine is still on its way) frees the buttons after this. */
const RELEASE_MS = 4000;

/**
 * Makes every action harmless to tap twice, and moves focus to the new turn's heading once a tap has led there.
 * Never on load: a shop's page must not jump because a panel arrived in it.
 */
export function useOneTap(view: View, actions: Actions) {
  // A stop that the first file draws knows no lines; the engine's is the same.
  const isStop = view.turn?.ending?.outcome === "stopped";
  const place = isStop ? "stopped" : `${view.turn?.turn}/${view.lines.length}`;
  const [sent, setSent] = useState<View | null>(null);
  // State comes too late for the second tap of a double tap; the ref knows at once.
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
        // A danger wins over every tap before it: it is the last that is given, as an answer or by its own way.
        const isDanger = view.dangers.some(({ id }) => id === given.at(-1));
        if (locked.current === view && !isDanger) return;
        locked.current = view;
        led.current = true;
        setSent(view);
        (all[name] as (...given: never[]) => void)(...given);
      },
  });
  return { actions: once, busy: sent === view, heading, place };
}

function showHeading(heading: HTMLElement): void {
  heading.focus({ preventScroll: true });
  const { top } = heading.getBoundingClientRect();
  // 64: a shop's own bar often sticks to the top of its page.
  if (top < 64 || top > innerHeight / 2) heading.scrollIntoView({ block: "start" });
}
