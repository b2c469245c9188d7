import { plainText } from "../catalogue/index.ts";
import type { Complain } from "../loading/index.ts";
import type { Resource } from "../turn/index.ts";
import { isOpen } from "./open-words.ts";

/** What is taken of a shop's own words. */
export const wordsBounds = {
  /** Bytes of the file: thrice as many as all texts have that may be put otherwise. */
  bytes: 30_000,
  /** Entries: more than there are texts that may be put otherwise. */
  entries: 300,
  /** Seconds that the panel waits for the file: until then the first question stands there in our words. */
  seconds: 3,
};

/** What in a shop's file is no text of ours by its key: what the shop says of itself. */
export const factsKey = "shop";

/** Texts of a shop's own by their keys, as its file has them for one language; nothing is checked but their shape. */
export type OwnWords = Record<string, string>;

/**
 * A shop's file: texts by key, and for one language alone the same once more below its tag, which wins.
 * `complain` hears of what is no text by a key, one sentence each.
 */
export function readOwnWords(json: unknown, language: string, complain: Complain): OwnWords {
  if (!isObject(json)) {
    complain('attribute "words": the file must hold an object of texts by their keys. It is ignored.');
    return {};
  }
  const ofLanguage = Object.entries(json).find(([tag]) => tag === language)?.[1];
  const others = Object.entries(json).filter(
    ([key, held]) => key !== factsKey && !(isTag(key) && isObject(held)),
  );
  const entries = [...others, ...Object.entries(isObject(ofLanguage) ? ofLanguage : {})];
  const most = wordsBounds.entries;
  if (entries.length > most)
    complain(`attribute "words": only the first ${most} texts of ${entries.length} are read.`);
  return Object.fromEntries(
    entries.slice(0, most).filter((entry): entry is [string, string] => {
      if (typeof entry[1] === "string") return true;
      skip(complain, entry[0], "it is no text");
      return false;
    }),
  );
}

/**
 * Texts with a shop's own in place of ours, each only where it says nothing false, dangerous or unreadable by its form:
 * it has a key that is open to shops, all placeholders of ours and no other, no markup, and is not too long.
 * @param ours whole files of locales by name
 * @returns new texts; what could not be taken is ours, and `complain` hears of it, one sentence each
 */
export function putOwnWords(ours: Resource, words: OwnWords, complain: Complain): Resource {
  const put = structuredClone(ours);
  for (const [key, written] of Object.entries(words)) {
    const path = key.split(".");
    const last = path.pop() ?? "";
    const holder = path.reduce<Resource | string | undefined>(
      (at, name) => (isObject(at) && Object.hasOwn(at, name) ? (at as Resource)[name] : undefined),
      put,
    );
    const text = isObject(holder) && Object.hasOwn(holder, last) ? (holder as Resource)[last] : undefined;
    const mine = plainText(written);
    const why = !isOpen(key)
      ? "there is no such text that a shop may put otherwise"
      : typeof text !== "string"
        ? "there is no text by that key"
        : faultOf(mine, text);
    if (why) skip(complain, key, why);
    else (holder as Resource)[last] = mine;
  }
  return put;
}

/** Why a text can't stand in for another of ours; empty where it can. */
function faultOf(mine: string, ours: string): string {
  const most = 2 * ours.length + 10;
  const [has, needs] = [placeholdersOf(mine), placeholdersOf(ours)];
  const missing = needs.filter((name) => !has.includes(name));
  const foreign = has.filter((name) => !needs.includes(name));
  if (!mine) return "it is empty";
  if (missing[0]) return `it lacks {{${missing.join("}}, {{")}}}`;
  if (foreign[0]) return `it names {{${foreign.join("}}, {{")}}}, which that text knows nothing of`;
  if (/<[a-z/!]|&#?\w+;/i.test(mine)) return "it has markup, which would be shown as it is written";
  if (/[{}]/.test(mine.replace(placeholder, ""))) return "it has a brace that begins or ends nothing";
  if (mine.length > most) return `it has ${mine.length} characters, and there is room for ${most}`;
  return "";
}

const placeholder = /{{\s*([\w-]+)\s*}}/g;

const placeholdersOf = (text: string) => [
  ...new Set([...text.matchAll(placeholder)].map(([, name = ""]) => name)),
];

const skip = (complain: Complain, key: string, why: string) =>
  complain(`attribute "words": "${plainText(key).slice(0, 80)}" keeps our words, because ${why}.`);

const isObject = (held: unknown): held is object =>
  typeof held === "object" && held !== null && !Array.isArray(held);

/** A language, not the key of a text. */
const isTag = (key: string) => /^[a-z]{2,3}(-[A-Za-z]+)*$/.test(key);
