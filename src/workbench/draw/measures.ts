/** Sizes of the drawing in SVG user units. */
export const measures = {
  /** Height of one line of text, and of a turn's first line. */
  line: 16,
  title: 20,
  pad: 6,
  font: 11,
  /** Room for one letter: more than the widest common sans-serif takes on average, as the font is the reader's own. */
  letter: 6.4,
};

/** The width of a box that holds these lines. */
export function widthOf(lines: string[]): number {
  return Math.ceil(Math.max(...lines.map((text) => text.length)) * measures.letter + 2 * measures.pad + 4);
}
