import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright";
import { createServer } from "vite";
import { hands, startsFrom } from "./drive.ts";
import { fixtures } from "./fixtures.ts";

/*
 * Takes a picture of every fixture and runs axe on it: `npx tsx tests/panel/gallery/look.ts [part of a name] [width,…]`.
 * Pictures go to test-results/gallery/. Ends with 1 when axe or the page's own console found fault.
 */
const [wanted = "", widths = "320,360,1280"] = process.argv.slice(2);
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const folder = fileURLToPath(new URL("../../../test-results/gallery/", import.meta.url));
mkdirSync(folder, { recursive: true });

const server = await createServer({ configFile: fileURLToPath(new URL("vite.config.ts", import.meta.url)) });
await server.listen();
const address = `${server.resolvedUrls?.local[0]}tests/panel/gallery/index.html`;
const browser = await chromium.launch({
  executablePath: "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
  ],
});

let faults = 0;
const fault = (where: string, what: string) => {
  faults += 1;
  console.log(`${where}: ${what}`);
};

for (const name of [...Object.keys(fixtures), ...Object.keys(startsFrom)]) {
  if (wanted && !name.match(new RegExp(`^(${wanted})$`))) continue;
  for (const width of widths.split(",").map(Number)) {
    for (const theme of ["light", "dark"]) {
      const where = `${name}-${width}-${theme}`;
      const context = await browser.newContext({ viewport: { width, height: 740 }, deviceScaleFactor: 1 });
      const page = await context.newPage();
      page.on("pageerror", (error) => fault(where, String(error)));
      page.on("console", (message) => message.type() === "error" && fault(where, message.text()));
      await page.goto(`${address}?fixture=${startsFrom[name] ?? name}&theme=${theme}`);
      await page.getByRole("region", { name: "Ice maker help" }).waitFor();
      await hands[name]?.(page);
      await page.waitForFunction(() => document.fonts.status === "loaded");
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (wide > 0) fault(where, `${wide} px too wide`);
      // The panel cuts off what is too wide for it, which the page's own width does not show.
      const cut = await page.evaluate(() => {
        const root = document.querySelector("#panel")?.shadowRoot;
        const edge = root?.querySelector(".panel")?.getBoundingClientRect().right ?? 0;
        return [...(root?.querySelectorAll(".panel *") ?? [])]
          .filter((each) => each.getBoundingClientRect().right > edge + 0.5)
          .map((each) => each.outerHTML);
      });
      if (cut[0]) fault(where, `cut off at the panel's edge: ${cut[0].slice(0, 140)}`);
      const found = await page.evaluate(`${axe}; axe.run(document)`);
      for (const { id, nodes } of (found as { violations: { id: string; nodes: { html: string }[] }[] })
        .violations) {
        fault(where, `${id}: ${nodes.map((node) => node.html.slice(0, 140)).join(" | ")}`);
      }
      await page.screenshot({ path: `${folder}${where}.png`, fullPage: true });
      await context.close();
    }
  }
}
await browser.close();
await server.close();
console.log(`${faults} faults`);
process.exitCode = faults ? 1 : 0;
