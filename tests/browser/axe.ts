import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "@playwright/test";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

type Found = { violations: { id: string; nodes: { target: unknown; failureSummary?: string }[] }[] };

/** Screens that axe has found no fault with, to the letter; another look would say the same. */
const faultless = new Set<string>();

/**
 * What axe-core (all its rules, WCAG 2.2 and its own best practice) holds against the page as it is now, a line
 * each. It looks through open shadow roots.
 * @param look what else a screen looks like depends on, such as its width and colours
 */
export async function violationsOn(page: Page, look = ""): Promise<string[]> {
  const markup = await page.evaluate(() => {
    const panels = [...document.querySelectorAll("fridgeside-panel")];
    return [location.pathname, ...panels.map((each) => each.shadowRoot?.innerHTML)].join();
  });
  if (faultless.has(look + markup)) return [];
  // Fetched by the page, as its policy allows; sent from here each time it would cost more than the look itself.
  const isThere = await page.evaluate(() => "axe" in window);
  if (!isThere) await page.evaluate(() => import("/axe.min.js" as string)).catch(() => page.evaluate(source));
  const { violations } = await page.evaluate<Found>("axe.run(document, { resultTypes: ['violations'] })");
  if (violations.length === 0) faultless.add(look + markup);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${JSON.stringify(node.target)} ${node.failureSummary ?? ""}`),
  );
}
