/** A link as an absolute http or https address, or null for anything else. */
export function toWebAddress(typed: string, base: string): string | null {
  try {
    const url = new URL(typed, base);
    return url.protocol === "https:" || url.protocol === "http:" ? url.href : null;
  } catch {
    return null;
  }
}
