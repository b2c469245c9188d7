/** Texts as the files of a language have them, by the parts of their keys. */
export type Resource = { [key: string]: string | Resource };
