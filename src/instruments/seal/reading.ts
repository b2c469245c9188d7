/**
 * A strip of paper pulled at twelve spots around a shut door, clockwise from the top left corner: 0, 3, 6 and 9 are
 * the corners, with two spots on each side between them. Null was not tried, or cannot be reached.
 */
export type SealReading = {
  kind: "seal";
  door: "one" | "two" | "drawer";
  spots: readonly (null | "grips" | "drags" | "slips")[];
};
