import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright";
import { createServer } from "vite";

/*
 * Every drawing on one sheet, as wide as on a phone of 320 px: `npx tsx tests/panel/gallery/sheet.ts [part of an id] [locale]`.
 * Pictures go to test-results/drawings/: light, dark, and in forced colours.
 */
const [id = ".", locale = "en-GB"] = process.argv.slice(2);
const folder = fileURLToPath(new URL("../../../test-results/drawings/", import.meta.url));
mkdirSync(folder, { recursive: true });
const server = await createServer({ configFile: fileURLToPath(new URL("vite.config.ts", import.meta.url)) });
await server.listen();
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox"] });
for (const colorScheme of ["light", "dark"] as const)
  for (const forcedColors of ["none", "active"] as const) {
    const page = await browser.newPage({ viewport: { width: 1210, height: 600 }, colorScheme, forcedColors });
    await page.goto(
      `${server.resolvedUrls?.local[0]}tests/panel/gallery/sheet.html?id=${id}&locale=${locale}`,
    );
    await page.getByRole("img").first().waitFor();
    const name = forcedColors === "active" ? `${colorScheme}-forced` : colorScheme;
    await page.screenshot({ path: `${folder}${name}.png`, fullPage: true });
    await page.close();
  }
await browser.close();
await server.close();
