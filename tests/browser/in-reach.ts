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
    root?.querySelector(".panel")?.classList.add("used");
    root?.querySelector("h2")?.scrollIntoView({ block: "start" });
    await new Promise(requestAnimationFrame);
    const drawing = root?.querySelector(".tile")?.getBoundingClientRect().height ?? 0;
    if (drawing > innerHeight * 0.45) return false;
    const seen = (list: string) =>
      [...(root?.querySelectorAll<HTMLElement>(list) ?? [])].find(
        (each) => each.checkVisibility() && !each.closest(".foot, details"),
      );
    // What is ticked, entered or run; where there is no such thing, what leads on.
    const first =
      seen(".turn :is(input, select, .dial)") ??
      seen(".turn .main") ??
      seen(".dock button") ??
      seen(".turn button");
    // An ending that says all without a button has nothing to tap.
    if (!first) return true;
    const { top, bottom, left, right } = first.getBoundingClientRect();
    if (top < 0 || bottom > innerHeight) return false;
    const at = root?.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    return at === first || first.contains(at ?? null) || Boolean(at?.closest("label")?.contains(first));
  });
}
