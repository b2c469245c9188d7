/** What shops call things, a file a language. Another language is another file, and its line here. */
import { de } from "./de.ts";
import { en } from "./en.ts";
import { es } from "./es.ts";
import { fr } from "./fr.ts";
import { it } from "./it.ts";
import { nl } from "./nl.ts";
import { pl } from "./pl.ts";
import type { ShopWords } from "./shop-words.ts";

export type { ShopWords } from "./shop-words.ts";

export const allWords: readonly ShopWords[] = [en, de, fr, es, it, nl, pl];
