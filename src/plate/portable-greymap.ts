import type { Grey } from "./grey.ts";

/** A picture as a binary portable greymap (Netpbm's PGM, P5): a line of words and the shades as they are. */
export function portableGreymap({ width, height, data }: Grey): Uint8Array<ArrayBuffer> {
  const head = Uint8Array.from(`P5\n${width} ${height}\n255\n`, (letter) => letter.charCodeAt(0));
  const file = new Uint8Array(head.length + data.length);
  file.set(head);
  file.set(data, head.length);
  return file;
}
