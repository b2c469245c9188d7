/** When a shop's people can be asked: weekdays from 0 for Monday, and minutes from midnight. `to` may lie in the next day. */
export type HelpHours = { days: number[]; from: number; to: number }[];

const names = ["Mo", "Tu", "We", "Th", "Fr", "Sa", "Su"];

/** Characters of the attribute, and spans in it. */
const [longest, most] = [300, 30];

const day = "(Mo|Tu|We|Th|Fr|Sa|Su)";
const time = "([01]\\d|2[0-4]):([0-5]\\d)";
const days = new RegExp(`^${day}(?:-${day})?$`);
const times = new RegExp(`^${time}-${time}$`);

/**
 * Reads opening hours as schema.org's `openingHours` has them: `Mo-Fr 09:00-17:30, Sa 10:00-14:00`. Days without a time
 * are open all day; a span that ends before it begins ends on the next day.
 * @returns null where they are written in another way
 */
export function readHelpHours(typed: string): HelpHours | null {
  if (typed.length > longest) return null;
  const hours: HelpHours = [];
  let meant: number[] = [];
  let isTimed = false;
  for (const word of typed.split(/[\s,;]+/).filter(Boolean)) {
    const [, first = "", last = first] = days.exec(word) ?? [];
    const [, fromHour, fromMinute, toHour, toMinute] = times.exec(word) ?? [];
    if (first) {
      if (isTimed) meant = [];
      isTimed = false;
      meant = [...meant, ...daysFrom(names.indexOf(first), names.indexOf(last))];
    } else if (fromHour && meant[0] !== undefined) {
      const from = Number(fromHour) * 60 + Number(fromMinute);
      const to = Number(toHour) * 60 + Number(toMinute);
      if (Math.max(from, to) > 1440) return null;
      hours.push({ days: meant, from, to: to > from ? to : to + 1440 });
      isTimed = true;
    } else return null;
  }
  if (meant[0] !== undefined && !isTimed) hours.push({ days: meant, from: 0, to: 1440 });
  return hours[0] && hours.length <= most ? hours : null;
}

/** From one weekday to another, over Sunday if need be. */
function daysFrom(first: number, last: number): number[] {
  return Array.from({ length: ((last - first + 7) % 7) + 1 }, (_, place) => (first + place) % 7);
}

/** Whether this is a time zone that the browser knows, such as `Europe/London`. */
export function isZone(zone: string): boolean {
  try {
    return zone.length <= 60 && Boolean(new Intl.DateTimeFormat("en", { timeZone: zone }));
  } catch {
    return false;
  }
}

/**
 * Whether somebody can be asked at an instant.
 * @param hours null for always
 * @param zone where the hours hold; null for where this device is
 * @param now milliseconds since 1970
 */
export function isHelpOpen(hours: HelpHours | null, zone: string | null, now: number): boolean {
  if (!hours) return true;
  const { format } = new Intl.DateTimeFormat("en-GB", {
    weekday: "short",
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
    ...(zone && { timeZone: zone }),
  });
  const [, name = "", hour, minute] = /(\w\w)\w*\D+(\d\d)\D(\d\d)/.exec(format(now)) ?? [];
  const today = names.indexOf(name);
  const at = Number(hour) * 60 + Number(minute);
  const isWithin = (day: number, minutes: number) =>
    hours.some(({ days, from, to }) => days.includes(day) && minutes >= from && minutes < to);
  return isWithin(today, at) || isWithin((today + 6) % 7, at + 1440);
}
