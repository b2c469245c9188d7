import fc from "fast-check";
import ICAL from "ical.js";
import { RRule } from "rrule";
import { describe, expect, test } from "vitest";
import { addMonths, type CalendarEntry, calendarFile, repeatRule } from "../../src/measuring/index.ts";

const entry: CalendarEntry = {
  uid: "filter-2026-02-28@example",
  stamp: "2025-09-01T09:30:00+01:00",
  starts: { day: "2026-02-28" },
  title: "Change the water filter",
  notes: "Turn the water off first.",
};
const fileOf = (more: Partial<CalendarEntry> = {}) => calendarFile({ ...entry, ...more });
const timeOf = (part: ICAL.Component, name: string) => part.getFirstPropertyValue(name) as ICAL.Time;
const secondsOf = (alarm: ICAL.Component) =>
  (alarm.getFirstPropertyValue("trigger") as ICAL.Duration).toSeconds();
const alarmOf = (event: ICAL.Component) => {
  const alarm = event.getFirstSubcomponent("valarm");
  if (!alarm) throw new Error("There should be an alarm");
  return alarm;
};
/** The one entry of a file, as ical.js reads it. */
const eventOf = (more: Partial<CalendarEntry> = {}) => {
  const calendar = new ICAL.Component(ICAL.parse(fileOf(more)));
  const [event, ...others] = calendar.getAllSubcomponents("vevent");
  if (!event || others.length) throw new Error("There should be one entry");
  return event;
};
const octets = (line: string) => new TextEncoder().encode(line).length;
const linesOf = (file: string) => file.split("\r\n").slice(0, -1);

const byIcal = (start: string, rule: string, count: number) => {
  const iterator = ICAL.Recur.fromString(rule).iterator(ICAL.Time.fromDateString(start));
  return Array.from({ length: count }, () => iterator.next()?.toString());
};
const byRrule = (start: string, rule: string, count: number) => {
  const dates = RRule.fromString(
    `DTSTART:${start.replaceAll("-", "")}T000000Z\nRRULE:${rule};COUNT=${count}`,
  );
  return dates.all().map((date) => date.toISOString().slice(0, 10));
};

describe("a rule that comes again (RFC 5545 3.3.10)", () => {
  test("on days 1 to 28 a plain monthly rule will do", () => {
    expect(repeatRule("2025-09-15", 6)).toBe("FREQ=MONTHLY;INTERVAL=6");
    expect(repeatRule("2025-02-28", 6)).toBe("FREQ=MONTHLY;INTERVAL=6");
  });

  test("the 31st is the last of its month, which every calendar knows", () => {
    expect(repeatRule("2025-08-31", 6)).toBe("FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=-1");
  });

  test("a 29th or 30th that never meets February needs no more than a plain rule", () => {
    expect(repeatRule("2025-11-30", 6)).toBe("FREQ=MONTHLY;INTERVAL=6");
    expect(repeatRule("2025-10-29", 6)).toBe("FREQ=MONTHLY;INTERVAL=6");
  });

  test("one that does is counted from the year's end: the last of February is day −307, 29 August −125", () => {
    expect(repeatRule("2024-02-29", 6)).toBe("FREQ=YEARLY;BYYEARDAY=-125,-307");
    expect(repeatRule("2025-08-30", 6)).toBe("FREQ=YEARLY;BYYEARDAY=-307,-124");
  });

  test("where the months do not fit into a year it is the last of the days from 28 on (W12, run with dateutil)", () => {
    expect(repeatRule("2025-05-30", 9)).toBe("FREQ=MONTHLY;INTERVAL=9;BYMONTHDAY=28,29,30;BYSETPOS=-1");
  });

  test("a bare rule on the 31st would leave out February, a year late (W12, by both libraries)", () => {
    for (const expand of [byIcal, byRrule])
      expect(expand("2025-08-31", "FREQ=MONTHLY;INTERVAL=6;BYMONTHDAY=31", 2)).toEqual([
        "2025-08-31",
        "2026-08-31",
      ]);
  });

  test.each(["2025-08-31", "2024-02-29", "2025-11-30", "2025-09-15", "2025-08-29"])(
    "a filter fitted on %s comes again every six months for ten years, by ical.js and by rrule",
    (start) => {
      const expected = Array.from({ length: 21 }, (_, half) => addMonths(start, 6 * half));
      expect(byIcal(start, repeatRule(start, 6), 21)).toEqual(expected);
      expect(byRrule(start, repeatRule(start, 6), 21)).toEqual(expected);
    },
  );

  const anyDay = fc
    .tuple(fc.integer({ min: 0, max: 131 }), fc.integer({ min: 1, max: 31 }))
    .map(([month, day]) => addMonths(`2020-01-${`${day}`.padStart(2, "0")}`, month));
  const dates = (start: string, months: number) =>
    Array.from({ length: 13 }, (_, times) => addMonths(start, months * times));

  test("any day comes again when addMonths says, after any number of months, by rrule", () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 24 }), (start, months) => {
        expect(byRrule(start, repeatRule(start, months), 13)).toEqual(dates(start, months));
      }),
      { numRuns: 500 },
    );
  });

  // With 5 or 9 months it needs BYSETPOS, which ical.js 2.2.1 leaves out beside BYMONTHDAY.
  test("and after any months that fit into a year, by ical.js, on which some calendars are built", () => {
    fc.assert(
      fc.property(anyDay, fc.constantFrom(1, 2, 3, 4, 6, 12), (start, months) => {
        expect(byIcal(start, repeatRule(start, months), 13)).toEqual(dates(start, months));
      }),
      { numRuns: 500 },
    );
  });
});

describe("a calendar file, as ical.js reads it (RFC 5545)", () => {
  test("a whole day stays that day wherever it is read, with an alarm at nine", () => {
    const event = eventOf();
    const start = timeOf(event, "dtstart");
    expect(start.isDate).toBe(true);
    expect(start.toString()).toBe("2026-02-28");
    const alarm = alarmOf(event);
    expect(alarm.getFirstPropertyValue("action")).toBe("DISPLAY");
    expect(secondsOf(alarm)).toBe(9 * 3600);
    expect(alarm.getFirstPropertyValue("description")).toBe(entry.title);
  });

  test("an instant is told in UTC, with an alarm at that instant", () => {
    const event = eventOf({ starts: { instant: "2026-07-01T00:15:30.5+02:00" } });
    expect(timeOf(event, "dtstart").toString()).toBe("2026-06-30T22:15:30Z");
    const alarm = alarmOf(event);
    expect(secondsOf(alarm)).toBe(0);
  });

  test("it has what the standard asks for, and takes no time of the person's day", () => {
    const calendar = new ICAL.Component(ICAL.parse(fileOf()));
    expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
    expect(calendar.getFirstPropertyValue("prodid")).toBeTruthy();
    const event = eventOf();
    expect(event.getFirstPropertyValue("uid")).toBe(entry.uid);
    expect(timeOf(event, "dtstamp").toString()).toBe("2025-09-01T08:30:00Z");
    expect(event.getFirstPropertyValue("transp")).toBe("TRANSPARENT");
    expect(event.getFirstPropertyValue("rrule")).toBeNull();
    expect(event.getFirstPropertyValue("url")).toBeNull();
  });

  test("it comes again where that is asked for, by the rule for its own day", () => {
    const again = eventOf({ starts: { day: "2025-08-31" }, everyMonths: 6 });
    const dates = new ICAL.Event(again).iterator();
    expect([dates.next().toString(), dates.next().toString()]).toEqual(["2025-08-31", "2026-02-28"]);
    const instant = eventOf({ starts: { instant: "2025-08-31T12:00:00Z" }, everyMonths: 6 });
    const instants = new ICAL.Event(instant).iterator();
    expect(instants.next().toString()).toBe("2025-08-31T12:00:00Z");
    expect(instants.next().toString()).toBe("2026-02-28T12:00:00Z");
  });

  test("an address is kept, and cannot begin a line of its own", () => {
    const url = "https://shop.example/help?model=a;b,c&x=%20#part";
    expect(eventOf({ url }).getFirstPropertyValue("url")).toBe(url);
    expect(
      eventOf({ url: "https://shop.example/\r\nATTENDEE:a" }).getFirstPropertyValue("attendee"),
    ).toBeNull();
  });

  test("a comma, a semicolon, a backslash, a line break and a colon come back as they were", () => {
    const notes = "Water off, first; then C:\\fit it\nTurn: right";
    expect(fileOf({ notes })).toContain("DESCRIPTION:Water off\\, first\\; then C:\\\\fit it\\nTurn: right");
    expect(eventOf({ notes }).getFirstPropertyValue("description")).toBe(notes);
  });

  test("any title and notes come back, but for control characters and the kind of line break", () => {
    const kept = (text: string) => text.replace(/\r\n?/g, "\n").replace(/(?![\n\t])\p{Cc}/gu, "");
    const text = fc.oneof(
      fc.string({ unit: "binary", maxLength: 200 }),
      fc.string({ unit: "grapheme", maxLength: 200 }),
      fc.string({
        unit: fc.constantFrom("a", " ", "\t", "\n", "\r", "\\", ";", ",", ":", '"', "é", "冰", "🧊"),
      }),
    );
    fc.assert(
      fc.property(text, text, text, (title, notes, uid) => {
        const event = eventOf({ title, notes, uid });
        expect(event.getFirstPropertyValue("summary")).toBe(kept(title));
        expect(event.getFirstPropertyValue("description")).toBe(kept(notes));
        expect(event.getFirstPropertyValue("uid")).toBe(kept(uid));
        expect(timeOf(event, "dtstart").toString()).toBe("2026-02-28");
      }),
      { numRuns: 1000 },
    );
  });

  test("every line ends in CRLF, has 75 octets at most and whole characters only", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "binary", maxLength: 300 }),
        fc.webUrl({ size: "large" }),
        (notes, url) => {
          const file = fileOf({ notes, url });
          expect(file.endsWith("END:VCALENDAR\r\n")).toBe(true);
          expect(file.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
          for (const line of linesOf(file)) {
            expect(octets(line)).toBeLessThanOrEqual(75);
            expect(line).not.toMatch(/^[\uDC00-\uDFFF]|^ [\uDC00-\uDFFF]|[\uD800-\uDBFF]$/);
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  test("a line is folded no sooner than it must be: 75 octets, then 74 and a space", () => {
    const [first, second] = linesOf(fileOf({ notes: "x".repeat(200) })).filter((line) =>
      line.includes("xxx"),
    );
    expect(octets(first ?? "")).toBe(75);
    expect(octets(second ?? "")).toBe(75);
    expect(second?.startsWith(" x")).toBe(true);
  });

  test("no text whatever throws, and what cannot be read as a time is still a calendar", () => {
    const text = fc.string({ unit: "binary" });
    fc.assert(
      fc.property(text, text, fc.double(), (stamp, instant, everyMonths) => {
        expect(() => fileOf({ stamp, starts: { instant }, everyMonths })).not.toThrow();
        expect(() => fileOf({ stamp, starts: { day: instant }, everyMonths })).not.toThrow();
      }),
    );
    expect(timeOf(eventOf({ stamp: "soon" }), "dtstamp").toString()).toBe("1970-01-01T00:00:00Z");
  });
});
