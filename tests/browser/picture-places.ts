import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import type { Browser } from "playwright";
import { readGallery } from "../gallery/read-gallery.ts";

/** What `npm run screenshots -- places` takes: `--width 360 --theme light --language en-GB`, `--only` a part of a place's name. */
export function readChoice(args: string[]) {
  const { values } = parseArgs({
    args,
    options: {
      width: { type: "string", default: "360" },
      theme: { type: "string", default: "light" },
      language: { type: "string", default: "en-GB" },
      only: { type: "string", default: "" },
    },
  });
  return values;
}

/**
 * Takes a picture of each place of the gallery, as high as it is, and lays them on one page to be looked through.
 * @param into the folder that the pictures are written to; what was there goes
 * @returns the places that never came to stand
 */
export async function picturePlaces(
  browser: Browser,
  address: string,
  into: string,
  { width, theme, language, only }: ReturnType<typeof readChoice>,
): Promise<string[]> {
  rmSync(into, { recursive: true, force: true });
  mkdirSync(into, { recursive: true });
  const page = await browser.newPage({ viewport: { width: Number(width), height: 740 } });
  const missing: string[] = [];
  const figures: string[] = [];
  for (const { name } of readGallery().places.filter((place) => place.name.includes(only))) {
    await page.goto(
      new URL(`gallery/panel.html?${new URLSearchParams({ place: name, theme, language })}`, address).href,
    );
    const stands = page.locator("html[data-stands]").waitFor({ state: "attached" });
    if (
      await stands.then(
        () => false,
        () => true,
      )
    )
      missing.push(name);
    const file = `${name.replaceAll(/[^\w-]/g, "_")}.png`;
    await page.screenshot({ path: `${into}/${file}`, fullPage: true, animations: "disabled" });
    figures.push(`<figure><figcaption>${name}</figcaption><img src="${file}" alt="" /></figure>`);
  }
  await page.close();
  writeFileSync(
    `${into}/index.html`,
    `<!doctype html><meta charset="utf-8" /><title>${language}, ${theme}, ${width} px</title>
<style>body { display: flex; flex-wrap: wrap; gap: 16px; font-family: sans-serif } figure { margin: 0 }</style>
${figures.join("\n")}
`,
  );
  return missing;
}
