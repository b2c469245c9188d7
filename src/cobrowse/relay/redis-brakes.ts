import type { RedisLine } from "./redis-line.ts";
import type { StoreBrakes } from "./store.ts";

/**
 * Brakes of several relays together: otherwise whoever guesses has as many tries as there are relays. They do what
 * `createBrakes` does, except that failures in a row are forgotten a day after the last.
 * @param seal what Redis has of an address or an agent
 */
export function createRedisBrakes(
  line: Pick<RedisLine, "run" | "ask">,
  prefix: string,
  seal: (name: string) => string,
): StoreBrakes {
  const all = `${prefix}failures`;
  const failuresOf = (name: string) => `${prefix}failures:${seal(name)}`;
  const lockOf = (name: string) => `${prefix}lock:${seal(name)}`;
  return {
    tries: async (address, now) => {
      const wait = Number(await line.run("tries", [`${prefix}tries:${seal(address)}`], now));
      return wait > 0 ? { why: "too-often", wait } : null;
    },
    held: async (names, now) => {
      const [locked, busy] = (await line.run("held", [all, ...names.map(lockOf)], now)) as [number, number];
      if (locked > 0) return { why: "locked", wait: locked };
      return busy > 0 ? { why: "busy", wait: busy } : null;
    },
    failed: async (names, now) => {
      await line.run("failed", [all, ...names.flatMap((name) => [failuresOf(name), lockOf(name)])], now);
    },
    succeeded: async (names) => {
      await line.ask("DEL", names.map(failuresOf));
    },
  };
}
