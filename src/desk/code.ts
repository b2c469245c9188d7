/**
 * A code as somebody typed it, without what stands between its characters; the relay reads look-alikes. Null where it
 * has not the 8 letters and digits of a code: a try that can't be right must not count as one.
 */
export function codeIn(typed: string): string | null {
  const plain = typed.toUpperCase().replace(/[^\p{L}\p{N}]/gu, "");
  return /^[0-9A-TV-Z]{8}$/.test(plain) ? plain : null;
}
