import { isOneSlip } from "../catalogue/index.ts";
import { attributeNames } from "./first-options.ts";

/** Ours; the last ones the first file need not know. */
const known: readonly string[] = [
  ...attributeNames,
  "plate-reader",
  "basket-link",
  "relay",
  "help-hours",
  "help-zone",
  "insight",
  "consent",
  "words",
  "picture",
  "picture-alt",
  "label",
];

/** Attributes that any tag may have, as far as pages set them on one like this. */
const everyTag = new Set(
  "id class style lang dir hidden slot title part tabindex role is inert translate nonce exportparts popover".split(
    " ",
  ),
);

/** What frameworks mark their tags with is written with signs that none of ours has. */
const ofOthers = /^(data|aria|on)|[^a-z-]|^-/;

/**
 * The attributes of a tag that mean nothing to it, each with the one that may be meant or null.
 * @param names in lower case, as a page's tag gives them
 */
export function findUnknownNames(names: readonly string[]): { name: string; meant: string | null }[] {
  return names
    .filter((name) => !known.includes(name))
    .filter((name) => !everyTag.has(name) && !ofOthers.test(name))
    .map((name) => ({ name, meant: known.find((each) => isNear(name, each)) ?? null }));
}

/** One slip away, or the same but for dashes, or one begins with the other. */
function isNear(name: string, known: string): boolean {
  const [typed, meant] = [name, known].map((text) => text.replaceAll("-", "")) as [string, string];
  const isStart =
    Math.min(typed.length, meant.length) > 3 && (meant.startsWith(typed) || typed.startsWith(meant));
  return typed === meant || isStart || isOneSlip(typed, meant);
}
