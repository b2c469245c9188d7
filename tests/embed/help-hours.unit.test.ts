import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isHelpOpen, readHelpHours } from "../../src/embed/help-hours.ts";

/* Days and times as schema.org's `openingHours` writes them; the first two are its own examples. */

const zone = "Europe/London";
/** Whether it is open at an instant in UTC, which London's clocks show in winter. */
const isOpen = (hours: string, at: string, where = zone) =>
  isHelpOpen(readHelpHours(hours), where, Date.parse(at));

// The 5th of January 2026 is a Monday.
describe("opening hours", () => {
  test.each([
    ["Tu,Th 16:00-20:00", "2026-01-06T16:00Z", true],
    ["Tu,Th 16:00-20:00", "2026-01-07T16:00Z", false],
    ["Mo-Su", "2026-01-11T03:00Z", true],
    ["Mo-Fr 09:00-17:30, Sa 10:00-14:00", "2026-01-05T08:59Z", false],
    ["Mo-Fr 09:00-17:30, Sa 10:00-14:00", "2026-01-05T09:00Z", true],
    ["Mo-Fr 09:00-17:30, Sa 10:00-14:00", "2026-01-09T17:29Z", true],
    ["Mo-Fr 09:00-17:30, Sa 10:00-14:00", "2026-01-09T17:30Z", false],
    ["Mo-Fr 09:00-17:30, Sa 10:00-14:00", "2026-01-10T13:00Z", true],
    ["Mo-Fr 09:00-17:30, Sa 10:00-14:00", "2026-01-11T13:00Z", false],
    ["Mo-Fr 09:00-12:00,13:00-17:00", "2026-01-05T12:30Z", false],
    ["Mo-Fr 09:00-12:00,13:00-17:00", "2026-01-05T13:00Z", true],
    ["Sa-Mo 10:00-11:00", "2026-01-11T10:30Z", true],
    ["Sa-Mo 10:00-11:00", "2026-01-06T10:30Z", false],
    // Over midnight.
    ["Su 22:00-02:00", "2026-01-05T01:59Z", true],
    ["Su 22:00-02:00", "2026-01-05T02:00Z", false],
    ["Su 22:00-02:00", "2026-01-11T21:59Z", false],
    ["Mo 00:00-24:00", "2026-01-05T23:59Z", true],
  ])("%s: at %s open is %s", (hours, at, open) => {
    expect(isOpen(hours, at)).toBe(open);
  });

  test("hold where the shop is, whichever zone the phone is in, and by its summer time", () => {
    expect(isOpen("Mo-Fr 09:00-17:00", "2026-01-05T14:30Z", "America/New_York")).toBe(true);
    expect(isOpen("Mo-Fr 09:00-17:00", "2026-01-05T13:30Z", "America/New_York")).toBe(false);
    expect(isOpen("Mo-Fr 09:00-17:00", "2026-07-06T08:00Z")).toBe(true);
    expect(isOpen("Mo-Fr 09:00-17:00", "2026-07-06T16:00Z")).toBe(false);
  });

  test("that nobody has named are all hours", () => {
    expect(isHelpOpen(null, null, Date.parse("2026-01-11T03:00Z"))).toBe(true);
  });

  test("are none, or some that can be asked, whatever is written there", () => {
    const word = fc.constantFrom("Mo", "Su", "Fr-Tu", "09:00-17:00", "22:00-02:00", "99:00-1:00", ",", "-");
    const written = fc.oneof(
      fc.string(),
      fc.array(word).map((all) => all.join(" ")),
    );
    fc.assert(
      fc.property(written, fc.date({ noInvalidDate: true }), (hours, now) => {
        const read = readHelpHours(hours);
        if (read) expect(isHelpOpen(read, zone, now.getTime())).toBeTypeOf("boolean");
      }),
    );
  });
});
