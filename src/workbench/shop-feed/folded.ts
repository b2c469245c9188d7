/** A text as the trade's words are compared: small letters without marks, as a keyboard without them has it. */
export function folded(text: string): string {
  return text
    .toLowerCase()
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .replaceAll("ł", "l")
    .replaceAll("ß", "ss");
}
