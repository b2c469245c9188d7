import { relayBounds as bounds } from "../bounds.ts";

/** Why a try is not even looked at, and for how many milliseconds. */
export type Braked = { why: "too-often" | "locked" | "busy"; wait: number };

/**
 * Brakes on guessing: so many tries a minute from one address, a lock after failures in a row of one address or agent,
 * and one brake for everybody. `names` are the address and, where it is known, the agent.
 */
export type Brakes = {
  /** Counts a try of this address. @returns null where it may be looked at */
  tries(address: string, now: number): Braked | null;
  /** Whether one of these is locked, or everybody is held. */
  held(names: readonly string[], now: number): Braked | null;
  failed(names: readonly string[], now: number): void;
  succeeded(names: readonly string[]): void;
};

type Known = { tries: number[]; failures: number; lockedUntil: number };
const minute = 60_000;

/** Brakes that nobody has tried yet. They live as long as the relay. */
export function createBrakes(): Brakes {
  const known = new Map<string, Known>();
  let failures: number[] = [];
  const of = (name: string, now: number): Known => {
    const one = known.get(name) ?? { tries: [], failures: 0, lockedUntil: 0 };
    if (!known.has(name) && known.size >= bounds.remembered) forgetOne(known, now);
    known.set(name, one);
    return one;
  };
  return {
    tries: (address, now) => {
      const one = of(address, now);
      one.tries = one.tries.filter((at) => at > now - minute);
      const [first = now] = one.tries;
      if (one.tries.length >= bounds.tries) return { why: "too-often", wait: first + minute - now };
      one.tries.push(now);
      return null;
    },
    held: (names, now) => {
      const until = Math.max(...names.map((name) => known.get(name)?.lockedUntil ?? 0));
      if (until > now) return { why: "locked", wait: until - now };
      failures = failures.filter((at) => at > now - minute);
      const [first = now] = failures;
      return failures.length < bounds.failuresOfAll ? null : { why: "busy", wait: first + minute - now };
    },
    failed: (names, now) => {
      failures = [...failures.filter((at) => at > now - minute), now];
      for (const name of names) {
        const one = of(name, now);
        one.failures++;
        if (one.failures < bounds.failures) continue;
        one.failures = 0;
        one.lockedUntil = now + bounds.lockLasts;
      }
    },
    succeeded: (names) => {
      for (const name of names) {
        const one = known.get(name);
        if (one) one.failures = 0;
      }
    },
  };
}

/** Makes room: the oldest that is not locked, or the oldest of all. */
function forgetOne(known: Map<string, Known>, now: number): void {
  let oldest: string | undefined;
  for (const [name, { lockedUntil }] of known) {
    oldest ??= name;
    if (lockedUntil > now) continue;
    oldest = name;
    break;
  }
  if (oldest !== undefined) known.delete(oldest);
}
