import { findModel, parseCatalogue } from "../../../src/catalogue/index.ts";
import { startPrintReader } from "../../../src/embed/plate-worker.ts";
import * as plate from "../../../src/plate/index.ts";
import { chanceOf } from "../world/chance.ts";
import { takePhoto } from "./distort.ts";
import { printPlate } from "./print.ts";

Object.assign(globalThis, {
  plate,
  startPrintReader,
  findModel,
  parseCatalogue,
  chanceOf,
  printPlate,
  takePhoto,
});
