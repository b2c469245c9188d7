/**
 * Crockford's base 32 (crockford.com/base32.html): neither I, L, O nor U, so that a code can be read out over the
 * phone, and what was heard as one of the first three is still right.
 */
const symbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const letters = 8;

/** A code of 8 characters, 40 bits, made of 5 random bytes. */
export function codeFrom(bytes: Uint8Array): string {
  let rest = bytes.slice(0, 5).reduce((sum, byte) => sum * 256 + byte, 0);
  let code = "";
  for (let place = 0; place < letters; place++) {
    code = (symbols[rest % 32] ?? "") + code;
    rest = Math.floor(rest / 32);
  }
  return code;
}

/** A code as it is shown: two groups of four. */
export function shownCode(code: string): string {
  return `${code.slice(0, 4)}-${code.slice(4)}`;
}

/** A code as somebody typed it, in either case, with hyphens or spaces; null where it is none. */
export function readCode(typed: string): string | null {
  const plain = typed.toUpperCase().replace(/[\s-]/g, "").replace(/[IL]/g, "1").replace(/O/g, "0");
  return plain.length === letters && [...plain].every((one) => symbols.includes(one)) ? plain : null;
}
