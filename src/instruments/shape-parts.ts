import * as z from "zod/mini";
import { massUnits } from "../measuring/index.ts";
import { readingBounds } from "./bounds.ts";

/** A number of a reading; a reading of any size would make a log of any size. */
export const number = z.number().check(z.minimum(-readingBounds.number), z.maximum(readingBounds.number));

/** A day or a month as text; `check` of its instrument says whether it is one. */
export const date = z.string().check(z.maxLength(readingBounds.date));

export const massUnit = z.enum(massUnits);

/** An estimate as a log keeps it, without the shape of its errors. */
export const estimate = z.object({ value: number, u: number });
