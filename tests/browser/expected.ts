import { readFileSync } from "node:fs";
import { compileGuide } from "../../src/compile/index.ts";
import { replay, type Session, startSession } from "../../src/session/index.ts";
import { createTexts, type Texts } from "../../src/turn/index.ts";
import { readFlow } from "../../src/workbench/build/flows-folder.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { type Answers, at } from "../session/drive.ts";
import { readerOf } from "../turn/reader.ts";
import { wayTo } from "./ways.ts";

/** The flow that the built script carries. */
export const flow = readFlow();

/** Built once in each process: what was advised is then remembered from session to session. */
export const guide = compileGuide(flow);

const locales = readLocales();

/** Every text as a reader of this language sees it. */
export function textsIn(language: string): Texts {
  return createTexts(locales, language, readerOf(flow, language));
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

/** A code from which every other differs in more than one place, with a part of this kind in stock. */
export function codeWith(kind: string): string {
  const parts = feed.parts.filter((part) => part.kind === kind && part.stock === "in-stock");
  const codes = feed.models.map(({ code }) => code);
  const differs = (one: string, other: string) => [...one].filter((each, at) => each !== other[at]).length;
  const code = codes.find(
    (one) =>
      codes.every((other) => other === one || differs(one, other) > 1) &&
      parts.some((part) => part.fits.includes(one)),
  );
  if (!code) throw new Error(`The demo shop has no ${kind} in stock`);
  return code;
}

/** 09:00 in London on a Monday in March: the page's clock starts here. */
export const morning = "2026-03-02T09:00:00Z";

/** A session before its first answer, on the chart and with the advice that the built script has. */
export function freshSession(started = at(0), model: string | null = null): Session {
  return startSession(guide, started, model);
}

const known = new Map<string, Session>();

/**
 * A session at a turn, or at its ending for a cause, as reach.ts finds it: what `answers` names was answered so, and all
 * else as on a sound machine as far as that leads there.
 */
export function sessionAt(turn: string, answers: Answers = {}, cause?: string): Session {
  const key = JSON.stringify([turn, answers, cause]);
  const session = known.get(key) ?? replay(guide, wayTo(freshSession(), turn, answers, cause)).session;
  known.set(key, session);
  return session;
}

/** At the question for the model code: the ice bin is cracked, which takes no measuring to find. */
export function atModelOfBin(): Session {
  return sessionAt("part.model", { "opening.symptom": "no-ice", "opening.supply": "plumbed" }, "bin-cracked");
}

/** Text with every run of white space as one blank, as a person reads it. */
export function flat(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}
