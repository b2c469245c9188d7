import { readFileSync } from "node:fs";
import { cpus, loadavg } from "node:os";
import { type Browser, chromium, type Page } from "playwright";
import { compileGuide } from "../../src/compile/index.ts";
import { createTexts } from "../../src/turn/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { readerOf } from "../turn/reader.ts";
import { buildFloor, buildOurs, type Files, importsOf } from "./built.ts";
import { chromiumSwitches } from "./chromium-switches.ts";
import { goalsOf } from "./goals.ts";
import { pages } from "./pages.ts";
import { bytesReport, meaningOfNumbers, timesReport } from "./report.ts";
import { serveFiles } from "./serve.ts";
import { device, type Visit, visit } from "./visit.ts";
import { createVisitor } from "./visitor.ts";
import { wornFilter } from "./worn-filter.ts";

const runs = 5;

/** Measures the panel beside the floor, one after the other in every run, and prints both. */
export async function benchPage(executablePath: string): Promise<void> {
  const busy = (loadavg()[0] ?? 0) / cpus().length;
  const ours = await buildOurs();
  const floor = await buildFloor();
  const extra: [string, Buffer][] = Object.entries(pages).map(([name, text]) => [name, Buffer.from(text)]);
  const catalogue = readFileSync(new URL("../../demo/catalogue.json", import.meta.url));
  const files: Files = new Map([...ours, ...floor, ...extra, ["catalogue.json", catalogue]]);
  const { address, close } = await serveFiles(files);
  const browser = await chromium.launch({ executablePath, args: chromiumSwitches });
  const measured: { ours: Visit[]; floor: Visit[] } = { ours: [], floor: [] };
  try {
    for (let run = 1; run <= runs; run++) {
      process.stderr.write(`run ${run} of ${runs}\n`);
      measured.floor.push(await visitFloor(browser, `${address}floor.html`));
      measured.ours.push(await visitOurs(browser, `${address}ours.html`));
    }
  } finally {
    await browser.close();
    close();
  }
  console.log(meaningOfNumbers(device, runs, { version: browser.version(), busy }));
  console.log(`\n${bytesReport(files, measured)}`);
  console.log(`\n${timesReport(measured)}`);
  const imports = await importsOf(ours.get("fridgeside.en-GB.js") as Buffer);
  const goals = goalsOf(files, measured, imports.now);
  console.log("\nGoals");
  for (const { met, says } of goals) console.log(`  ${met ? "pass" : "MISS"}  ${says}`);
}

/** A whole session, from the first question to a part with its price. */
async function visitOurs(browser: Browser, address: string): Promise<Visit> {
  const flow = readFlow();
  const texts = createTexts(readLocales(), "en-GB", readerOf(flow));
  const drawings: string[] = [];
  const visited = await visit(browser, address, async (page, settled) => {
    const visitor = createVisitor(page, compileGuide(flow), texts, wornFilter.answers, wornFilter.model);
    await visitor.go();
    await settled;
    while (visitor.turn().kind !== "ending") {
      drawings.push(visitor.turn().picture ?? "");
      await visitor.go();
    }
    const { ending } = visitor.turn();
    if (ending?.outcome !== "part") throw new Error(`The session ended with ${ending?.outcome}, not a part`);
    await page.getByRole("button", { name: texts("part.add") }).waitFor();
  });
  return { ...visited, drawings };
}

/** As many taps between the two questions of the floor. */
function visitFloor(browser: Browser, address: string): Promise<Visit> {
  return visit(browser, address, async (page: Page, settled) => {
    for (let tap = 0; tap < 20; tap++) {
      if (tap === 1) await settled;
      const heading = page.getByRole("heading", { level: 2 });
      const before = await heading.textContent();
      await page.getByRole("button").first().tap();
      await page.waitForFunction((text) => document.querySelector("h2")?.textContent !== text, before);
    }
  });
}
