import { dataAddress, engineAddress, firstTurnAddress } from "virtual:data";
import type { StartFile } from "../loading/index.ts";
import { firstSheet } from "../panel/frame/index.ts";
import type { FirstTurn } from "../turn/index.ts";
import laterAddress from "./later.css?url&no-inline";

/** Everything behind the first question: the engine, one language's data, and the sheets to draw it with. */
export type Parts = {
  engine: typeof import("./engine.ts");
  data: StartFile;
  sheets: CSSStyleSheet[];
};

/** The rules of this very file. */
export const ownSheet = createSheet(firstSheet);

/**
 * Loads what was built with this very file, and looks whether it is that: a server may answer anything for a file
 * that it no longer has.
 * @param again any text, for a second try: nothing that a cache or the browser's list of modules holds is good enough
 * @throws Error where a part is missing, cut off or another one
 */
export async function loadParts(language: string, again = ""): Promise<Parts> {
  const read = async (address: string) => {
    const response = await fetch(address, { cache: again ? "reload" : "default" });
    if (!response.ok) throw new Error(`${response.status} for ${address}`);
    return response;
  };
  const another = `${engineAddress()}?${again}`;
  const [engine, data, rules] = await Promise.all([
    // A module that has failed once is never asked for again at the same address.
    again ? (import(/* @vite-ignore */ another) as Promise<Parts["engine"]>) : import("./engine.ts"),
    read(dataAddress(language)).then((file) => file.json() as Promise<StartFile>),
    read(laterAddress).then((file) => file.text()),
  ]);
  const isWhole = data.format && data.resources?.[language]?.ui;
  // The last rule of later.css says that nothing of it is missing.
  if (!engine.startEngine || !isWhole || !rules.includes("--fs-whole")) throw new Error("Another file");
  return { engine, data, sheets: [ownSheet, createSheet(rules)] };
}

/** What a first file would know in another language than its own. @throws Error where it does not come */
export async function getFirstTurn(language: string): Promise<FirstTurn> {
  const known = firstTurns.get(language);
  if (known) return known;
  const first = (await (await fetch(firstTurnAddress(language))).json()) as FirstTurn;
  if (first.language !== language) throw new Error("Something else lies where the texts were");
  firstTurns.set(language, first);
  return first;
}
const firstTurns = new Map<string, FirstTurn>();

/** By language. Kept for as long as the page lives: a tag that is moved about finds everything ready. */
const asked = new Map<string, Promise<Parts>>();
const come = new Set<string>();

/** Who loads: this file, or a newer one that has taken its place on the server. */
let loader: typeof loadParts | null = null;
/** Names the try; kept once it has succeeded, so that another language goes on with the same engine. */
let again = "";

/** Whether the parts of a language are there already. */
export const arePartsHere = (language: string) => come.has(language);

/** The parts of a language, asked for once; after a failure anew, from the first file that the server has now. */
export function getParts(language: string): Promise<Parts> {
  const parts = asked.get(language) ?? (again ? loadAgain(language) : loadParts(language));
  asked.set(language, parts);
  parts.then(
    () => come.add(language),
    () => dropParts(language),
  );
  return parts;
}

/** Forgets parts that cannot be used. */
export function dropParts(language: string): void {
  again = `${Math.random()}`;
  asked.delete(language);
  come.delete(language);
}

async function loadAgain(language: string): Promise<Parts> {
  loader ??= await reloadSelf().catch(() => null);
  return (loader ?? loadParts)(language, again);
}

/**
 * After a deploy a browser may still have the old first file, whose parts are gone. The address as it stands is
 * fetched for the next visit, the one with a query for now: the page has the old module under the other.
 */
async function reloadSelf(): Promise<typeof loadParts> {
  await fetch(import.meta.url, { cache: "reload" });
  const address = new URL(import.meta.url);
  address.searchParams.set("again", again);
  const newer = (await import(/* @vite-ignore */ address.href)) as { loadParts: typeof loadParts };
  return newer.loadParts;
}

/** A constructed sheet; a `<style>` element would need the page's permission. */
export function createSheet(rules: string): CSSStyleSheet {
  const made = new CSSStyleSheet();
  made.replaceSync(rules);
  return made;
}
