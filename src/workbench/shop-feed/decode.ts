import { isUtf8 } from "node:buffer";
import iconv from "iconv-lite";
import { UnusableFeed } from "../feed/index.ts";

/** A file's text, its encoding, and how that was found. */
export type Decoded = { text: string; encoding: string; why: string };

/**
 * Reads bytes as text. Without a mark of its own, what is no UTF-8 is taken for Windows-1252, which holds all that
 * Latin-1 has.
 * @param given the encoding, where somebody has said it
 * @throws UnusableFeed where nobody knows that encoding
 */
export function decode(bytes: Buffer, given?: string): Decoded {
  const { encoding, why } = given ? { encoding: given, why: "you said so" } : findEncoding(bytes);
  if (!iconv.encodingExists(encoding))
    throw new UnusableFeed(
      `Nobody here knows the encoding "${encoding}". Write utf-8, utf-16le, windows-1252, iso-8859-2 or another of the usual names`,
    );
  return { text: iconv.decode(bytes, encoding), encoding, why };
}

function findEncoding(bytes: Buffer): { encoding: string; why: string } {
  const mark = "it begins with that byte order mark";
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return { encoding: "utf-8", why: mark };
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { encoding: "utf-16le", why: mark };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { encoding: "utf-16be", why: mark };
  const half = halfEmpty(bytes);
  if (half) return { encoding: half, why: "every other byte is zero" };
  const declared = /^\s*<\?xml[^>]*\sencoding=["']([\w.:-]+)["']/i.exec(
    bytes.toString("latin1", 0, 200),
  )?.[1];
  if (declared) return { encoding: declared.toLowerCase(), why: "its first line says so" };
  if (isUtf8(bytes)) return { encoding: "utf-8", why: "all of it is UTF-8" };
  return { encoding: "windows-1252", why: "it is no UTF-8. If letters look wrong, say --encoding" };
}

/** Which half of the first pairs of bytes is mostly zero, as in UTF-16 without its mark. */
function halfEmpty(bytes: Buffer): string | null {
  const pairs = Math.min(bytes.length >> 1, 1000);
  let [even, odd] = [0, 0];
  for (let at = 0; at < pairs * 2; at += 2) {
    if (bytes[at] === 0) even++;
    if (bytes[at + 1] === 0) odd++;
  }
  if (pairs < 4) return null;
  if (odd > pairs * 0.6 && even < pairs * 0.1) return "utf-16le";
  return even > pairs * 0.6 && odd < pairs * 0.1 ? "utf-16be" : null;
}
