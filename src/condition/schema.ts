import * as z from "zod/mini";
import { listOf } from "./bounded.ts";
import { flowBounds } from "./bounds.ts";

/** The name of anything in a flow. */
export const id = z
  .string()
  .check(
    z.maxLength(flowBounds.id),
    z.regex(
      /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/,
      "not an id: small letters, digits, single hyphens, a letter first",
    ),
  );
/** A check and one of its turns, such as `flow-test.run`. */
export const turnRef = z
  .string()
  .check(
    z.maxLength(flowBounds.turnRef),
    z.regex(/^[a-z][a-z0-9-]*\.[a-z][a-z0-9-]*$/, "not a check and its turn, as in flow-test.run"),
  );

const finding = z.strictObject({ turn: turnRef, is: listOf(id) });

/** The closed vocabulary of conditions. Data may combine these words and nothing else. */
export const condition = z.union([
  z.enum(["unwaited", "any-remedied"]),
  z.strictObject({ answered: finding }),
  z.strictObject({ verdict: finding }),
  z.strictObject({ done: id }),
  z.strictObject({ found: listOf(id) }),
  z.strictObject({ remedied: listOf(id) }),
  z.strictObject({ is: id }),
  z.strictObject({
    get all(): z.ZodMiniArray<typeof condition> {
      return listOf(condition);
    },
  }),
  z.strictObject({
    get any(): z.ZodMiniArray<typeof condition> {
      return listOf(condition);
    },
  }),
  z.strictObject({
    get not(): typeof condition {
      return condition;
    },
  }),
]);

/** A condition as a flow file writes it. */
export type Condition = z.infer<typeof condition>;
