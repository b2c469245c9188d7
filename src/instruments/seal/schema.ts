import * as z from "zod/mini";
import { readingBounds } from "../bounds.ts";

/** The shape of a survey in a kept log. */
export const shape = z.object({
  kind: z.literal("seal"),
  door: z.enum(["one", "two", "drawer"]),
  spots: z.array(z.nullable(z.enum(["grips", "drags", "slips"]))).check(z.maxLength(readingBounds.spots)),
});
