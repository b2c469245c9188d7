import * as plate from "../../../src/plate/index.ts";
import { startPrintReader } from "../../../src/embed/plate-worker.ts";
import { findModel, parseCatalogue } from "../../../src/catalogue/index.ts";
import { chanceOf } from "../world/chance.ts";
import { printPlate } from "./print.ts";
import { takePhoto } from "./distort.ts";
Object.assign(globalThis, { plate, startPrintReader, findModel, parseCatalogue, chanceOf, printPlate, takePhoto });
