import { encode } from "uqr";
import { plainText } from "../catalogue/index.ts";
import { carriedOf, type Journal, standingOf } from "../session/index.ts";
import type { Carried } from "../turn/index.ts";
import { longest, mark } from "./fragment.ts";
import type { Door } from "./missing.ts";

export { sumUp } from "./sum-up.ts";

/*
 * A conversation in a link: the journal, compressed, behind the `#`, which a browser sends to nobody. In a file of its
 * own, fetched when somebody asks for it or comes with one.
 */

/** A journal is some ten kilobytes; whoever sends a megabyte that unfolds from a short link is no panel. */
const longestText = 200_000;

/** The journal as text in the letters of a link. @throws TypeError where the browser cannot compress */
export async function packed(journal: Journal): Promise<string> {
  const text = JSON.stringify(carriedOf(standingOf(journal)));
  const bytes = new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  const letters = String.fromCharCode(...new Uint8Array(await new Response(bytes).arrayBuffer()));
  return btoa(letters).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** What was packed, not yet checked; null where it is no such text, is cut, or unfolds to more than a journal can be. */
export async function unpacked(text: string): Promise<unknown> {
  try {
    const letters = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    const bytes = Uint8Array.from(letters, (letter) => letter.charCodeAt(0));
    const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate-raw")).getReader();
    const decoder = new TextDecoder("utf-8", { fatal: true });
    let whole = "";
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      whole += decoder.decode(part.value, { stream: true });
      if (whole.length > longestText) {
        void reader.cancel().catch(() => {});
        return null;
      }
    }
    return JSON.parse(whole + decoder.decode());
  } catch {
    return null;
  }
}

/**
 * The link that opens the conversation on another device, and the same as a QR code (ISO/IEC 18004).
 * @throws RangeError where it is longer than a link can be
 * @param page the address of this page; what it has behind its `#` is left out
 */
export async function linkOf(journal: Journal, page: string): Promise<Carried> {
  const [address = ""] = page.split("#");
  const text = await packed(journal);
  if (text.length > longest) throw new RangeError("More was said than a link can hold");
  const link = `${address}${mark}${text}`;
  // The code is read off a clean screen: the lowest correction keeps its dots large.
  return { link, code: codeOf(link), words: wordsIn(journal) };
}

/** All that somebody typed and that the link holds, as one line of plain text each. */
function wordsIn(journal: Journal): string[] {
  const words = carriedOf(standingOf(journal)).entries.flatMap(({ event }) =>
    "words" in event && event.words ? plainText(event.words) : [],
  );
  return [...new Set(words)].filter(Boolean);
}

/** The conversation that a link has brought; null where it is none, or nothing was said in it. */
export async function broughtBy(text: string, door: Door): Promise<Journal | null> {
  const journal = door.parseJournal(await unpacked(text));
  return journal?.entries[0] ? journal : null;
}

/** Rows of dots, true for dark, without a margin; null where a link is longer than a code can hold. */
function codeOf(link: string): Carried["code"] {
  try {
    return encode(link, { ecc: "L", border: 0 }).data;
  } catch {
    return null;
  }
}
