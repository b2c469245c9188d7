import { crc32 } from "node:zlib";
import type { Change } from "./shelf.ts";

/** A change as a line of the file: a checksum of the rest, its place in the group that it is synced with, the change. */
type Line = { place: number; change: Change };

/** A group of changes as it is written; that happens only after the group before was synced. */
export function linesOf(changes: readonly Change[]): string {
  return changes
    .map((change, place) => {
      const rest = JSON.stringify([place, change]);
      return `${checksum(rest)} ${rest}\n`;
    })
    .join("");
}

/** What a file holds: its changes, and how many of its bytes are sound. */
export type Read = { changes: Change[]; bytes: number };

/**
 * Reads a file. A power cut may leave any part of the last group unwritten or torn, of which nobody was told that it is
 * kept: from the first such line on nothing counts.
 * @throws Error where lines of an earlier group are damaged, which no power cut does
 */
export function readLines(file: Uint8Array): Read {
  const read: Read = { changes: [], bytes: 0 };
  let from = 0;
  while (from < file.length) {
    const end = file.indexOf(10, from);
    const line = end < 0 ? null : readLine(file.subarray(from, end));
    if (!line) {
      refuseDamage(file, end, read.bytes);
      break;
    }
    read.changes.push(line.change);
    read.bytes = end + 1;
    from = end + 1;
  }
  return read;
}

/** Another group after the torn line was written when the line's own group had been synced: then it is no torn one. */
function refuseDamage(file: Uint8Array, torn: number, sound: number): void {
  for (let from = torn + 1; torn >= 0 && from < file.length; ) {
    const end = file.indexOf(10, from);
    if (end < 0) break;
    if (readLine(file.subarray(from, end))?.place === 0)
      throw new Error(`The relay's file is damaged after its first ${sound} bytes; bring back a copy of it.`);
    from = end + 1;
  }
}

function readLine(bytes: Uint8Array): Line | null {
  const text = new TextDecoder().decode(bytes);
  const [sum, rest] = [text.slice(0, 8), text.slice(9)];
  if (checksum(rest) !== sum) return null;
  const [place, change] = JSON.parse(rest) as [number, Change];
  return { place, change };
}

function checksum(text: string): string {
  return crc32(text).toString(16).padStart(8, "0");
}
