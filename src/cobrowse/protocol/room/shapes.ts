import * as z from "zod/mini";
import { relayBounds as bounds } from "../bounds.ts";
import { kinds } from "../kinds.ts";
import { type First, type Put, version } from "../messages.ts";

const text = (most: number) => z.string().check(z.maxLength(most));
const number = (least: number) => z.number().check(z.int(), z.minimum(least), z.maximum(bounds.number));
const v = z.literal(version);

const allKinds = Object.values(kinds).flatMap(({ householder, agent }) => [...householder, ...agent]);

/** The first message of a connection. A field that is not known is refused, as it is no way to say more. */
export const firstShape = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("open"), v }),
  z.strictObject({ type: z.literal("join"), v, code: text(bounds.code), token: text(bounds.token) }),
  z.strictObject({
    type: z.literal("return"),
    v,
    room: text(bounds.id),
    peer: text(bounds.id),
    secret: text(bounds.id),
    after: number(0),
  }),
]);

/** Every later one. What it carries is a text to the relay. */
export const laterShape = z.discriminatedUnion("type", [
  z.strictObject({
    type: z.literal("put"),
    lane: z.enum(["carried", "steering"]),
    n: number(1),
    kind: z.enum([...new Set(allKinds)]),
    body: text(bounds.body),
  }),
  z.strictObject({ type: z.literal("ask"), after: number(0) }),
]);

/** What an agent's token says. A retailer may say more in it; nothing of that is read. */
export const claimsShape = z.object({
  /** Seconds since 1970, as RFC 7519 has it. */
  exp: z.number().check(z.minimum(0), z.maximum(1e11)),
  nbf: z.optional(z.number().check(z.minimum(0), z.maximum(1e11))),
  shop: text(bounds.id),
  sub: text(bounds.name).check(z.minLength(1)),
  name: text(bounds.name).check(z.minLength(1)),
});

/** Who an agent is, as the retailer has signed it. */
export type Claims = z.infer<typeof claimsShape>;

/** Reads what a token says, whoever signed it; null where it is none of ours. */
export function readClaims(payload: string): Claims | null {
  const read = claimsShape.safeParse(parse(payload));
  return read.success ? read.data : null;
}

/** Reads the first message; null where it is none. */
export function readFirst(message: string): First | null {
  const read = firstShape.safeParse(parse(message));
  return read.success ? read.data : null;
}

/** Reads a later message; null where it is none. */
export function readLater(message: string): Put | { type: "ask"; after: number } | null {
  const read = laterShape.safeParse(parse(message));
  return read.success ? read.data : null;
}

function parse(message: string): unknown {
  try {
    return JSON.parse(message);
  } catch {
    return null;
  }
}
