import { plainText } from "../catalogue/index.ts";
import type { Complain } from "../loading/index.ts";
import { type HelpHours, isZone, readHelpHours } from "./help-hours.ts";

/** What is taken of the facts that a shop's answers quote. */
export const factBounds = {
  /** Of money, in whole units: more than a visit costs in any currency, less than a slip of the keyboard would make it. */
  money: 10_000_000,
  /** Days to send something back: a year, and a little more. */
  days: 400,
  /** Facts in the file: more than there are. */
  entries: 20,
};

/** An amount, or the least and the most of it, in whole units of the shop's currency. */
export type Money = readonly [least: number, most: number];

/** What a shop says of itself, checked: nothing of it is text, so nothing of it can say anything else. */
export type ShopFacts = {
  /** By ISO 4217; there wherever an amount of money is. */
  currency?: string;
  money?: Partial<Record<MoneyFact, Money>>;
  returnDays?: number;
  hours?: HelpHours;
  zone?: string;
};

type MoneyFact = "call-out" | "hourly-rate" | "delivery" | "free-delivery-from";

/** One fact by its name in the file: what it must be, in words, and how it is read; null where it can't be. */
type Reader = { wants: string; read(given: unknown): ShopFacts | null };

const when = <Given>(isIt: (given: unknown) => given is Given, facts: (given: Given) => ShopFacts) => ({
  read: (given: unknown) => (isIt(given) ? facts(given) : null),
});

const readers: Record<string, Reader> = {
  currency: {
    wants: "the code of a currency by ISO 4217, such as GBP",
    ...when(isCurrency, (currency) => ({ currency })),
  },
  "call-out": amounts("call-out"),
  "hourly-rate": amounts("hourly-rate"),
  delivery: amounts("delivery"),
  "free-delivery-from": {
    wants: "an amount of money such as 50",
    ...when(isAmount, (least) => ({ money: { "free-delivery-from": [least, least] } })),
  },
  "return-days": {
    wants: `a whole number from 2 to ${factBounds.days}`,
    ...when(isDays, (returnDays) => ({ returnDays })),
  },
  "opening-hours": {
    wants: "opening hours such as Mo-Fr 09:00-17:30, Sa 10:00-14:00",
    read(given) {
      const hours = typeof given === "string" ? readHelpHours(given) : null;
      return hours && { hours };
    },
  },
  "time-zone": {
    wants: "a time zone such as Europe/London",
    ...when(isKnownZone, (zone) => ({ zone })),
  },
};

/**
 * Reads what a shop's file says below `shop`. What cannot be used is left out, all else holds; `complain` hears why, one
 * sentence each.
 */
export function readShopFacts(json: unknown, complain: Complain): ShopFacts {
  if (json === undefined) return {};
  const ignore = (sentence: string) => complain(`attribute "words": ${sentence} It is ignored.`);
  if (typeof json !== "object" || json === null || Array.isArray(json)) {
    ignore('"shop" must be an object of facts by their names.');
    return {};
  }
  const facts: ShopFacts = {};
  const given = Object.entries(json);
  for (const [name, value] of given.slice(0, factBounds.entries)) {
    const reader = Object.hasOwn(readers, name) ? readers[name] : undefined;
    const read = reader?.read(value);
    if (read) Object.assign(facts, read, read.money && { money: { ...facts.money, ...read.money } });
    else {
      const called = `"${plainText(name).slice(0, 80)}"`;
      const known = `Known are ${Object.keys(readers).join(", ")}.`;
      if (reader) ignore(`${called} below "shop" must be ${reader.wants}; got ${shown(value)}.`);
      else ignore(`there is no ${called} below "shop". ${known}`);
    }
  }
  if (given.length > factBounds.entries)
    ignore(`only the first ${factBounds.entries} facts below "shop" are read. What follows is too many.`);
  if (facts.currency || !facts.money) return facts;
  ignore('an amount of money below "shop" needs a "currency", such as GBP.');
  const { money: _, ...others } = facts;
  return others;
}

function amounts(name: MoneyFact): Reader {
  return {
    wants: "an amount of money such as 65, or the least and the most such as [60, 80]",
    read(given) {
      const [least, most = least, ...more] = Array.isArray(given) ? given : [given];
      const isRange = !Array.isArray(given) || least < most;
      return isAmount(least) && isAmount(most) && isRange && more.length === 0
        ? { money: { [name]: [least, most] } }
        : null;
    },
  };
}

function isAmount(given: unknown): given is number {
  return typeof given === "number" && given >= 0 && given <= factBounds.money;
}

function isDays(given: unknown): given is number {
  return Number.isInteger(given) && Number(given) >= 2 && Number(given) <= factBounds.days;
}

function isCurrency(given: unknown): given is string {
  return typeof given === "string" && /^[A-Z]{3}$/.test(given);
}

function isKnownZone(given: unknown): given is string {
  return typeof given === "string" && isZone(given);
}

const shown = (given: unknown) => plainText(JSON.stringify(given)).slice(0, 80);
