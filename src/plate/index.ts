/** A photo of a rating plate: made ready to be read, and what was read held against a shop's catalogue. */
export { codesInLines, type PrintedLine } from "./codes-in-lines.ts";
export { evenLight } from "./even-light.ts";
export { type Grey, invert, type Pixels, quarterTurn, scaleTo, toGrey } from "./grey.ts";
export { portableGreymap } from "./portable-greymap.ts";
export { leanOf, rotate } from "./straighten.ts";
