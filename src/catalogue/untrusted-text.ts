import { bounds } from "./bounds.ts";

// Control characters, halves of characters, and the marks that turn the direction of the text around them.
const unprintable = /[\p{Cc}\p{Cs}\u202A-\u202E\u2066-\u2069]+/gu;

/** Text from outside as one printable line. Markup stays as it is: whoever shows it shows it as text. */
export function plainText(text: string): string {
  return text.replace(unprintable, " ").trim();
}

/**
 * The link if it leads to a page by http or https, else undefined. The host must be plain ASCII directly
 * after the two slashes: no name and password, no backslash, no letters that imitate others.
 */
export function safeLink(link: unknown): string | undefined {
  if (typeof link !== "string" || link.length > bounds.link) return undefined;
  const trimmed = link.trim();
  const isPage = /^https?:\/\/[a-z0-9][a-z0-9.-]*(:\d{1,5})?([/?#]|$)/i.test(trimmed);
  return isPage && !/[\s\p{C}\\<>"`]/u.test(trimmed) ? trimmed : undefined;
}
