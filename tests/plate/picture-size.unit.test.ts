import { expect, test } from "vitest";
import { pictureSizeOf } from "../../src/plate/index.ts";

const bytes = (...parts: (number[] | string)[]) =>
  Uint8Array.from(
    parts.flatMap((part) => (typeof part === "string" ? [...part].map((c) => c.charCodeAt(0)) : part)),
  );

const png = bytes([0x89], "PNG", [13, 10, 26, 10, 0, 0, 0, 13], "IHDR", [0, 0, 0x0f, 0xa0, 0, 0, 0x0b, 0xb8]);
const jpeg = bytes(
  [0xff, 0xd8],
  // A camera's notes, with a small picture in them that is not the photo.
  [0xff, 0xe1, 0, 12, 0xff, 0xd8, 0xff, 0xc0, 0, 9, 8, 0, 9, 0],
  // A filling byte, then the frame: 3000 rows of 4000.
  [0xff, 0xff, 0xc2, 0, 17, 8, 0x0b, 0xb8, 0x0f, 0xa0, 3],
);
const riff = (kind: string, rest: number[]) => bytes("RIFF", [0, 0, 0, 0], "WEBP", kind, [0, 0, 0, 0], rest);

test.each([
  ["a PNG", png],
  ["a JPEG", jpeg],
  ["a plain WebP", riff("VP8 ", [0, 0, 0, 0x9d, 1, 0x2a, 0xa0, 0x0f, 0xb8, 0x0b])],
  ["a lossless WebP", riff("VP8L", [0x2f, 0x9f, 0xcf, 0xed, 0x02])],
  ["an extended WebP", riff("VP8X", [0, 0, 0, 0, 0x9f, 0x0f, 0, 0xb7, 0x0b, 0])],
])("the size of %s is read from its beginning", (_, file) => {
  expect(pictureSizeOf(file)).toEqual({ width: 4000, height: 3000 });
});

test.each([
  ["nothing", bytes()],
  ["a page", bytes("<!doctype html><svg width=10>")],
  ["a PNG that is cut off", png.slice(0, 18)],
  ["a JPEG that is cut off", jpeg.slice(0, 20)],
  [
    "a PNG without pixels",
    bytes([0x89], "PNG", [13, 10, 26, 10, 0, 0, 0, 13], "IHDR", [0, 0, 0, 0, 0, 0, 0, 9]),
  ],
  ["a JPEG that leads nowhere", bytes([0xff, 0xd8, 0, 0, 0, 0])],
])("%s has none", (_, file) => {
  expect(pictureSizeOf(file)).toBeNull();
});
