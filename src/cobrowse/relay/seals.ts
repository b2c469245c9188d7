import { createHash, createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import { codeFrom } from "../protocol/room/index.ts";

/** What is secret, where it comes from, and what of it is kept. */
export type Seals = {
  /** A name that is not guessed: 128 bits, for a room or as a secret. */
  newId(): string;
  newCode(): string;
  /** What is kept of a code. It has 40 bits only, so its digest needs the key. */
  code(plain: string): string;
  /** What is kept of a secret of 128 bits. */
  secret(plain: string): string;
  /** What other machines have of an address or of who an agent is. */
  name(plain: string): string;
  /** Whether two digests are the same, in a time that does not say where they differ. */
  isSame(one: string, other: string): boolean;
};

/** @param key as for tokens, at least 32 bytes */
export function createSeals(key: Uint8Array): Seals {
  const ofCodes = createHmac("sha256", key).update("codes of the relay").digest();
  const ofNames = createHmac("sha256", key).update("names at the relay's brakes").digest();
  return {
    newId: () => randomBytes(16).toString("base64url"),
    newCode: () => codeFrom(randomBytes(5)),
    code: (plain) => createHmac("sha256", ofCodes).update(plain).digest("base64url"),
    secret: (plain) => createHash("sha256").update(plain).digest("base64url"),
    name: (plain) => createHmac("sha256", ofNames).update(plain).digest("base64url"),
    isSame: (one, other) => {
      const [first, second] = [Buffer.from(one), Buffer.from(other)];
      return first.length === second.length && timingSafeEqual(first, second);
    },
  };
}
