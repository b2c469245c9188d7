import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "@playwright/test";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

type Found = { violations: { id: string; nodes: { target: unknown; failureSummary?: string }[] }[] };

/** Screens that axe has found no fault with, to the letter; another look would say the same. */
const faultless = new Set<string>();

/** The rules of axe that look at colours; nothing else about a screen depends on them. */
export const colourRules = ["color-contrast", "link-in-text-block"];

/**
 * What axe-core (all its rules, WCAG 2.2 and its own best practice) holds against the page as it is now, a line
 * each. It looks through open shadow roots.
 * @param look what else a screen looks like depends on, such as its width and colours
 * @param rules all of them unless told
 */
export async function violationsOn(page: Page, look = "", rules?: string[]): Promise<string[]> {
  const markup = await page.evaluate(() => {
    const panels = [...document.querySelectorAll("fridgeside-panel, fridgeside-desk")];
    return [location.pathname, ...panels.map((each) => each.shadowRoot?.innerHTML)].join();
  });
  if (faultless.has(look + markup)) return [];
  // Fetched by the page, as its policy allows; sent from here each time it would cost more than the look itself.
  const [isThere, isOnline] = await page.evaluate(() => ["axe" in window, navigator.onLine]);
  if (!isThere && isOnline) await page.evaluate(() => import("/axe.min.js" as string)).catch(() => {});
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(source);
  const options = JSON.stringify({ resultTypes: ["violations"], ...(rules ? { runOnly: rules } : {}) });
  const { violations } = await page.evaluate<Found>(`axe.run(document, ${options})`);
  if (violations.length === 0) faultless.add(look + markup);
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${JSON.stringify(node.target)} ${node.failureSummary ?? ""}`),
  );
}
