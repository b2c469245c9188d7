import { readFileSync } from "node:fs";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { readLocales } from "../../src/cli/locales-folder.ts";
import { createTexts, type Texts } from "../../src/session/index.ts";

/** The flow that the built script carries. */
export const flow = readFlow();

const locales = readLocales();

/** Every text as a reader of this language sees it. */
export function textsIn(language: string): Texts {
  return createTexts(locales, language, flow.limits);
}

type Feed = {
  models: { code: string; brand: string }[];
  parts: { number: string; name: string; kind: string; stock: string; fits: string[] }[];
};

/** The demo shop's feed, read by nothing of ours. */
export const feed: Feed = JSON.parse(
  readFileSync(new URL("../../demo/catalogue.json", import.meta.url), "utf8"),
);

/** The names of all parts of a kind that the feed lists for a code. */
export function namesOfParts(code: string, kind: string): string[] {
  return feed.parts.filter((part) => part.kind === kind && part.fits.includes(code)).map((part) => part.name);
}

/** 09:00 in London on a Monday in March: the page's clock starts here. */
export const morning = "2026-03-02T09:00:00Z";

/** Text with every run of white space as one blank, as a person reads it. */
export function flat(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}
