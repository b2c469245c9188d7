import { type HelpHours, isHelpOpen } from "./help-hours.ts";
import { fill, type HourParts, sayHours } from "./said-hours.ts";
import type { Money, ShopFacts } from "./shop-facts.ts";

/**
 * A shop's facts in words, by their names in `facts` of a side answer: money, days, hours, and whether it is open now.
 * @param parts what facts are put together of, as the answer has it
 * @param now milliseconds since 1970, by the device's clock
 */
export function sayFacts(
  { currency, money = {}, returnDays, hours, zone }: ShopFacts,
  parts: HourParts,
  language: string,
  now: number,
): Record<string, string> {
  const said: Record<string, string> = {};
  for (const [name, amount] of Object.entries(money))
    if (currency) said[name] = sayMoney(amount, currency, parts, language);
  if (money.delivery?.[1] === 0) {
    delete said["delivery"];
    delete said["free-delivery-from"];
    said["delivery-none"] = "";
  }
  if (returnDays) said["return-days"] = new Intl.NumberFormat(language).format(returnDays);
  // What is put together of nothing is asked for by no answer.
  return hours && parts["group"]
    ? { ...said, ...sayOpening(hours, zone ?? null, parts, language, now) }
    : said;
}

function sayOpening(
  hours: HelpHours,
  zone: string | null,
  parts: HourParts,
  language: string,
  now: number,
): Record<string, string> {
  const name = isElsewhere(zone, now) ? "opening-hours-there" : "opening-hours";
  return {
    [name]: sayHours(hours, parts, language),
    [isHelpOpen(hours, zone, now) ? "open" : "closed"]: "",
  };
}

/** Whether clocks there show another time than this device's. */
function isElsewhere(zone: string | null, now: number): boolean {
  const clockIn = (timeZone?: string) =>
    new Intl.DateTimeFormat("en-GB", {
      dateStyle: "short",
      timeStyle: "short",
      ...(timeZone && { timeZone }),
    });
  return zone !== null && clockIn(zone).format(now) !== clockIn().format(now);
}

/** '£65', '£4.50', '£60 to £80': pence only where there are any. */
function sayMoney([least, most]: Money, currency: string, parts: HourParts, language: string): string {
  const isWhole = Number.isInteger(least) && Number.isInteger(most);
  const { format } = new Intl.NumberFormat(language, {
    style: "currency",
    currency,
    ...(isWhole && { minimumFractionDigits: 0, maximumFractionDigits: 0 }),
  });
  return least === most ? format(least) : fill(parts["range"], { least: format(least), most: format(most) });
}
