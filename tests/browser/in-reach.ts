import type { Locator } from "@playwright/test";

/** Phones on which the next thing to tap has to be in sight, in CSS px, and on which share of turns at least. */
export const phones = [
  { width: 360, height: 740, least: 0.95 },
  { width: 320, height: 568, least: 0.8 },
];

/**
 * Whether what a turn is answered with first is in sight, whole and uncovered, once a tap has led there; and whether its
 * drawing takes less than 45 % of the window's height.
 */
export async function isInReach(host: Locator): Promise<boolean> {
  return host.evaluate(async ({ shadowRoot: root }) => {
    // As after a tap that led here; see showHeading.
    root?.querySelector("h2")?.scrollIntoView({ block: "start" });
    await new Promise(requestAnimationFrame);
    const drawing = root?.querySelector(".tile")?.getBoundingClientRect().height ?? 0;
    if (drawing > innerHeight * 0.45) return false;
    const turn = [...(root?.querySelectorAll<HTMLElement>(".turn button, .turn input, .turn select") ?? [])];
    const [first] = turn.filter(
      (each) => !each.matches(".quiet, .note *, .own-words *") && each.checkVisibility(),
    );
    // An ending that says all without a button has nothing to tap.
    if (!first) return true;
    const { top, bottom, left, right } = first.getBoundingClientRect();
    if (top < 0 || bottom > innerHeight) return false;
    const seen = root?.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    return seen === first || first.contains(seen ?? null) || Boolean(seen?.closest("label")?.contains(first));
  });
}
