import { foldGuard, type Guard } from "../../condition/index.ts";
import { type Prepared, statesIn } from "../../guide/index.ts";
import { type Asked, placeOf } from "../../instruments/index.ts";

/** A text as a literal of ECMAScript. */
export function literal(value: string): string {
  return `'${value.replace(/[\\']/g, "\\$&")}'`;
}

const isOneOf = (is: string[], value: string) => `[${is.map(literal).join(", ")}].indexOf(${value}) >= 0`;
const anyCause = (causes: string[], state: string) =>
  causes.length ? causes.map((one) => `causes[${literal(one)}] === '${state}'`).join(" || ") : "false";

/** Each word of the guards' vocabulary as an expression over the data model. */
const compilers: Record<string, (params: never) => string> = {
  answered: ({ turn, is }: { turn: string; is: string[] }) => isOneOf(is, `findings[${literal(turn)}]`),
  verdict: ({ turn, is }: { turn: string; is: string[] }) =>
    `measured[${literal(turn)}] === true && ${isOneOf(is, `findings[${literal(turn)}]`)}`,
  done: ({ check }: { check: string }) => `done.indexOf(${literal(check)}) >= 0`,
  found: ({ causes }: { causes: string[] }) => anyCause(causes, "found"),
  remedied: ({ causes }: { causes: string[] }) => anyCause(causes, "fixed"),
  "any-remedied": () => "remedies > 0",
  unwaited: () => "remedies > remediesAtWait",
  returning: ({ turn }: { turn: string }) => `returnTo === ${literal(turn)}`,
  modelled: () => "model !== null",
  reads: ({ instrument = "", place, is }: Asked & { is: string }) => {
    const asked = { instrument, verdict: is, place: placeOf(instrument, { place }) };
    return Object.entries(asked)
      .map(([name, value]) => `_event.data.${name} === ${value === null ? "null" : literal(value)}`)
      .join(" && ");
  },
  elapsed: ({ turn, minutes }: { turn: string; minutes: number }) =>
    `Date.parse(_event.data.at) - Date.parse(waits[${literal(turn)}] || _event.data.at) >= ${minutes} * 60000`,
  "may-look-again": ({ check }: { check: string }) => {
    const one = literal(check);
    return `done.indexOf(${one}) >= 0 && done[done.length - 1] !== ${one} && again.indexOf(${one}) < 0 && mended.indexOf(${one}) < 0`;
  },
  "last-read": ({ place, is }: { place: string; is: string[] }) => {
    const there = `measured[turn] === true && turn in findings && read[turn][0] === ${literal(place)}`;
    const inTime = "function (one, other) { return Date.parse(read[one][1]) - Date.parse(read[other][1]); }";
    const last = `Object.keys(read).filter(function (turn) { return ${there}; }).sort(${inTime}).slice(-1)`;
    return `${last}.some(function (turn) { return ${isOneOf(is, "findings[turn]")}; })`;
  },
  prepared: ({ of, is }: { of: string; is: string[] }) => {
    const place = `prepared[${literal(of)}]`;
    return isOneOf(is, `(${place} ? ${place}.is : 'as-found')`);
  },
  fresh: ({ gate, minutes, leaves }: { gate: string; minutes: number; leaves: Prepared }) => {
    const last = `confirmed[${literal(gate)}]`;
    // A transition without an event comes after one that has written down its instant; not every interpreter keeps it.
    const passed = `Date.parse(_event && _event.data ? _event.data.at : now) - Date.parse(${last})`;
    const states = statesIn(leaves).flatMap(([one, state]) => {
      const place = `prepared[${literal(one)}]`;
      return [
        `${place} && ${place}.is === ${literal(state)}`,
        `Date.parse(${place}.since) <= Date.parse(${last})`,
      ];
    });
    return [last, `${passed} >= 0`, `${passed} <= ${minutes} * 60000`, ...states].join(" && ");
  },
  "any-confirmed": () => "Object.keys(confirmed).length > 0",
  refused: ({ gates }: { gates: string[] }) =>
    gates.map((gate) => `refused.indexOf(${literal(gate)}) >= 0`).join(" || ") || "false",
  // Only a log that is replayed is led, and a document replays none.
  led: () => "false",
  advised: ({ check }: { check: string }) => `advice !== null && advice.check === ${literal(check)}`,
  fitted: ({ causes }: { causes: string[] }) =>
    causes.map((one) => `fitted.indexOf(${literal(one)}) >= 0`).join(" || ") || "false",
  untried: () => "untried.length > 0",
  "later-advised": () => "advice !== null && advice.later === true",
  "part-advised": ({ cause }: { cause: string }) => `advice !== null && advice.part === ${literal(cause)}`,
};

/** A guard as an ECMAScript expression for `cond`. @throws Error for a word that has no meaning here */
export function compileGuard(guard: Guard): string {
  return foldGuard<string>(guard, {
    word: ({ type, params }) => {
      const compile = compilers[type];
      if (!compile) throw new Error(`The guard "${type}" cannot be written as SCXML`);
      return compile(params as never);
    },
    all: (parts) => join(parts, " && ", "true"),
    any: (parts) => join(parts, " || ", "false"),
    not: (part) => `!(${part})`,
  });
}

function join(parts: string[], sign: string, none: string): string {
  return parts.length === 1 ? (parts[0] ?? "") : parts.map((part) => `(${part})`).join(sign) || none;
}
