/** A photo of a rating plate: made ready to be read, and what was read held against a shop's catalogue. */
export { bounds, readSide } from "./bounds.ts";
export { codesInLines, type PrintedLine } from "./codes-in-lines.ts";
export { despeckle, evenLight } from "./even-light.ts";
export { type Grey, invert, type Pixels, quarterTurn, scaleTo, toGrey } from "./grey.ts";
export { type PictureSize, pictureSizeOf } from "./picture-size.ts";
export { portableGreymap } from "./portable-greymap.ts";
export { mostMatches, type PlateMatch, readPlate, type Tools } from "./read-plate.ts";
export { lieOf, rotate } from "./straighten.ts";
