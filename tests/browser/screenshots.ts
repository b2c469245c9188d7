import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright";
import { serveFolders } from "../../demo/serve/serve-folders.ts";
import { compileGuide } from "../../src/compile/index.ts";
import { createTexts, type Turn } from "../../src/turn/index.ts";
import { buildEmbed } from "../../src/workbench/build/build.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { chromiumSwitches } from "../bench/chromium-switches.ts";
import { createVisitor } from "../bench/visitor.ts";
import { wornFilter } from "../bench/worn-filter.ts";
import { readerOf } from "../turn/reader.ts";
import { findChromium, thisMachine } from "./find-chromium.ts";
import { picturePlaces, readChoice } from "./picture-places.ts";
import { sideBySide } from "./side-by-side.ts";

/*
 * `npm run screenshots` takes the pictures of the README: one session on a phone, light and dark, and a phone beside an
 * agent's desk, into demo/screenshots/. Each picture is what the phone shows after the tap; only the part's card is
 * scrolled to. `npm run screenshots -- places` takes every place of the gallery, into .cache/places/.
 */
const root = fileURLToPath(new URL("../../", import.meta.url));
const folder = `${root}demo/screenshots/`;
const built = `${root}.cache/screenshots`;
const phone = { width: 360, height: 740 };

/**
 * The picture to take at a turn, wherever the advice brings it up, and each once; `done` after everything but the last
 * tap.
 */
function shotAt({ turn, kind, station, picture, gated }: Turn): { name: string; done?: true } | undefined {
  if (turn === "opening.danger") return { name: "opening" };
  if (turn === "flow-test.run") return { name: "flow", done: true };
  if (kind === "gate" && turn.endsWith("pulled-out")) return { name: "gate" };
  return kind === "choice" && station && picture && !gated ? { name: "check" } : undefined;
}

/** Pictures that stand alone beside the overview. */
const alone = ["check", "gate", "flow", "part"];

/** The question at which the agent of the picture with two screens helps. */
const helpedAt = "ice-bin.look";

const flow = readFlow();
const texts = createTexts(readLocales(), "en-GB", readerOf(flow));

const visitorOn = (page: Page) =>
  createVisitor(page, compileGuide(flow), texts, wornFilter.answers, wornFilter.model);

async function walk(browser: Browser, address: string, colorScheme: "light" | "dark") {
  const context = await browser.newContext({
    ...{ viewport: phone, deviceScaleFactor: 2, hasTouch: true, isMobile: true },
    ...{ colorScheme, locale: "en-GB" },
  });
  const page = await context.newPage();
  await page.goto(address);
  await page.getByRole("heading", { level: 2 }).waitFor();
  await page.waitForLoadState("networkidle");
  const visitor = visitorOn(page);
  const taken = new Map<string, Buffer>();
  for (;;) {
    const shot = shotAt(visitor.turn());
    const isNew = shot && !taken.has(shot.name);
    if (isNew && !shot.done) taken.set(shot.name, await take(page));
    if (visitor.turn().kind === "ending") break;
    await visitor.go(async () => {
      if (isNew && shot.done) taken.set(shot.name, await take(page));
    });
  }
  await page.getByRole("button", { name: texts("part.add") }).waitFor();
  await page.locator(".part-card").evaluate((card) => card.scrollIntoView());
  taken.set("part", await take(page));
  await context.close();
  return taken;
}

/** The phone's screen, with the focus ring and everything else as it is, but nothing half-way through moving. */
const take = (page: Page) => page.screenshot({ animations: "disabled", caret: "hide" });

async function walkToHelp(page: Page): Promise<void> {
  await page.getByRole("heading", { level: 2 }).waitFor();
  await page.waitForLoadState("networkidle");
  const visitor = visitorOn(page);
  while (visitor.turn().turn !== helpedAt) await visitor.go();
}

/** Draws pictures of one height side by side on one page and takes its picture. */
async function compose(
  browser: Browser,
  pictures: Buffer[],
  ground: string,
  height = Math.round((190 * phone.height) / phone.width),
): Promise<Buffer> {
  const gap = 12;
  // In a PNG the width and the height stand behind the name of the first chunk (W3C PNG, 11.2.1).
  const widths = pictures.map((one) => Math.round((height * one.readUInt32BE(16)) / one.readUInt32BE(20)));
  const page = await browser.newPage({
    viewport: { width: widths.reduce((sum, one) => sum + one + gap, gap), height: height + 2 * gap },
  });
  const images = pictures.map((each) => `<img src="data:image/png;base64,${each.toString("base64")}">`);
  await page.setContent(`<style>
    body { margin: 0; padding: ${gap}px; display: flex; gap: ${gap}px; background: ${ground} }
    img { height: ${height}px; border-radius: 12px }
  </style>${images.join("")}`);
  const picture = await page.screenshot();
  await page.close();
  return picture;
}

/** The pictures of the README. */
async function pictureReadme(browser: Browser, address: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const write = (name: string, picture: Buffer) => {
    writeFileSync(`${folder}${name}.png`, picture);
    console.log(`${name}.png  ${Math.round(readFileSync(`${folder}${name}.png`).length / 1000)} kB`);
  };
  const order = ["opening", "check", "flow", "gate", "part"];
  for (const scheme of ["light", "dark"] as const) {
    const taken = await walk(browser, address, scheme);
    const found = order.map((name) => {
      const picture = taken.get(name);
      if (!picture)
        throw new Error(`The session never came to "${name}"; it only came to ${[...taken.keys()]}`);
      return picture;
    });
    if (scheme === "light") for (const name of alone) write(name, taken.get(name) as Buffer);
    const ground = scheme === "light" ? "#e4dcec" : "#0d0a11";
    write(scheme === "light" ? "overview" : "overview-dark", await compose(browser, found, ground));
  }
  const proposed = texts(`checks.${helpedAt}.answers.fine`);
  const why = "You told me that it sits right.";
  const ends = await sideBySide(browser, [`${root}demo`, built], texts, { walk: walkToHelp, proposed, why });
  write("side-by-side", await compose(browser, [ends.phone, ends.desk], "#e4dcec", 620));
}

rmSync(built, { recursive: true, force: true });
await buildEmbed(built);
const { server, address } = await serveFolders([`${root}demo`, built], 0);
const browser = await chromium.launch({
  executablePath: findChromium(thisMachine),
  args: chromiumSwitches,
});
try {
  const [what, ...args] = process.argv.slice(2);
  if (what === "places") {
    const missing = await picturePlaces(browser, address, `${root}.cache/places`, readChoice(args));
    console.log(
      missing.length ? `Did not come to stand: ${missing.join(", ")}` : "Written: .cache/places/index.html",
    );
    process.exitCode = missing.length ? 1 : 0;
  } else await pictureReadme(browser, address);
} finally {
  await browser.close();
  server.closeAllConnections();
  server.close();
}
