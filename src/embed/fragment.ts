import type { Journal } from "../session/index.ts";

/** Before what a link carries. A page's own fragments never begin like this. */
export const mark = "#fridgeside=";

/** As long as what a link carries may be: browsers take that much, and conversations are a twentieth of it. */
export const longest = 40_000;

/** What the fragment of a page's address carries, not yet unpacked; null for nothing. */
export const carriedIn = (fragment: string): string | null =>
  fragment.startsWith(mark) ? fragment.slice(mark.length).slice(0, longest) : null;

/** What came of a link: a conversation, a text that none could be made of, or nothing yet. */
export type Brought = Journal | "broken" | null;
