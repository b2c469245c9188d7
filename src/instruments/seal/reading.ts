import * as z from "zod/mini";
import { readingBounds } from "../bounds.ts";

/**
 * A strip of paper pulled at twelve spots around a shut door, clockwise from the top left corner: 0, 3, 6 and 9 are
 * the corners, with two spots on each side between them. Null was not tried, or cannot be reached.
 */
export const shape = z.object({
  kind: z.literal("seal"),
  door: z.enum(["one", "two", "drawer"]),
  spots: z.array(z.nullable(z.enum(["grips", "drags", "slips"]))).check(z.maxLength(readingBounds.spots)),
});

export type SealReading = z.infer<typeof shape>;
