import type { Page } from "@playwright/test";

/** Everything that the script loads later. */
export const parts = "**/parts/**";

/** Holds back what the script loads later, until `release` is called. */
export async function holdParts(page: Page): Promise<{ release(): void }> {
  let release = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  await page.route(parts, async (route) => {
    await held;
    await route.continue().catch(() => {});
  });
  return { release: () => release() };
}
