/** What is taken of a photo, at most; judgement, without a source. */
export const bounds = {
  /** Bytes of its file: a phone's largest pictures have about 25 million. */
  file: 40_000_000,
  /** Bytes of its beginning, in which its size is looked for; a camera puts a small picture and its notes before it. */
  head: 500_000,
  /** Pixels before it is scaled; four bytes each are unpacked for a moment. */
  pixels: 70_000_000,
  /** Times longer than wide, or wider than long. */
  slimness: 10,
  /** Lines of one reading, and characters of a line. */
  lines: 400,
  line: 200,
} as const;

/** Pixels of a photo's longer side when it is read: print of 3 mm then has about 40 where the plate fills the photo. */
export const readSide = 1600;
