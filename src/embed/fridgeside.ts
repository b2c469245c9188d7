import languages from "virtual:languages";
import { chooseLanguage } from "../loading/language/index.ts";
import { waitForSignal } from "../loading/pace/index.ts";

/*
 * For a page that names no language's first file: loads the one of the tag or the page. A tag that comes later, in
 * another language, fetches the texts of that one.
 */
const tag = document.querySelector("fridgeside-panel");
const inherited =
  (tag ?? document.documentElement).closest("[lang]")?.getAttribute("lang") || navigator.language;
const language = chooseLanguage((name) => tag?.getAttribute(name) ?? null, inherited, languages);

async function load(tries = 0): Promise<void> {
  // A module that has failed once is never asked for again at the same address.
  const address = new URL(`fridgeside.${language}.js${tries ? `?${tries}` : ""}`, import.meta.url);
  await import(/* @vite-ignore */ address.href).catch(async () => {
    await waitForSignal(2 ** Math.min(tries, 5) * 1000);
    await load(tries + 1);
  });
}
load();
