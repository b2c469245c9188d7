import { gunzipSync } from "node:zlib";
import { unzipSync } from "fflate";
import { UnusableFeed } from "../feed/index.ts";
import { shopFeedBounds } from "./bounds.ts";

const isText = /\.(csv|tsv|tab|txt|json|jsonl|ndjson|xml|rss|atom)$/i;
const most = shopFeedBounds.bytes;

/**
 * What a file holds, if it is packed as gz or zip; else the file itself. A zip must hold one feed.
 * @throws UnusableFeed where it cannot be unpacked, or is too big
 */
export function unpack(bytes: Buffer): Buffer {
  if (bytes.length > most) throw tooBig();
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) return gunzip(bytes);
  if (bytes.subarray(0, 4).equals(Buffer.from("PK\u0003\u0004"))) return unzip(bytes);
  return bytes;
}

function gunzip(bytes: Buffer): Buffer {
  try {
    return gunzipSync(bytes, { maxOutputLength: most });
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === "ERR_BUFFER_TOO_LARGE") throw tooBig();
    throw new UnusableFeed("This gz file cannot be unpacked: it seems to be cut off or damaged");
  }
}

function unzip(bytes: Buffer): Buffer {
  const sizes = new Map<string, number>();
  const names: string[] = [];
  let unpacked: Record<string, Uint8Array>;
  try {
    unpacked = unzipSync(bytes, {
      filter({ name, originalSize }) {
        names.push(name);
        if (!isText.test(name) || /(^|\/)(__MACOSX|\.)/.test(name) || /^xl\//.test(name)) return false;
        if (originalSize > most) throw tooBig();
        sizes.set(name, originalSize);
        // More than one is refused anyway: nothing of the others is unpacked.
        return sizes.size === 1;
      },
    });
  } catch (fault) {
    if (fault instanceof UnusableFeed) throw fault;
    throw new UnusableFeed("This zip file cannot be unpacked: it seems to be cut off or damaged");
  }
  if (names.some((name) => name.startsWith("xl/")))
    throw new UnusableFeed("This is a spreadsheet. Save it as CSV in UTF-8, and codes and numbers as text");
  if (sizes.size !== 1) {
    const shown = [...sizes.keys()].slice(0, 5).join(", ");
    throw new UnusableFeed(
      sizes.size === 0
        ? "This zip file holds no feed: no csv, tsv, txt, json or xml"
        : `This zip file holds ${sizes.size} feeds: ${shown}. Unpack it and name one`,
    );
  }
  const [[name, size] = ["", 0]] = sizes;
  const text = unpacked[name];
  if (!text || text.length !== size) throw new UnusableFeed("This zip file is damaged");
  return Buffer.from(text.buffer, text.byteOffset, text.byteLength);
}

/** The feed that is too big to be held whole. */
export function tooBig(): UnusableFeed {
  return new UnusableFeed(
    `This feed is larger than ${most / 1e6} MB, which is the most for one that has to be understood. Write it in our own columns: such a feed may be any size`,
  );
}
