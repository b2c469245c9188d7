// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { filterTurn } from "../../../tests/panel/gallery/measure-fixtures.ts";
import { viewOf } from "../../../tests/panel/gallery/turns.ts";
import { mount } from "../../../tests/panel/mount.tsx";

const show = "Show how old it is";
/** Today is 20 June 2025 and a filter lasts six months (common practice, no source). */
const atFilter = (locale: "en-GB" | "en-US" = "en-GB") => mount(viewOf(filterTurn), { locale });
type Panel = Awaited<ReturnType<typeof atFilter>>;

async function typeDate({ pick, type, tap }: Panel, day: string, month: string, year: string) {
  await pick("I know the day");
  await type("Day", day);
  await type("Month", month);
  await type("Year", year);
  await tap(show);
}

describe("four ways to say when", () => {
  test("a day", async () => {
    const panel = await atFilter();
    await typeDate(panel, "7", "4", "2025");
    expect(panel.focused().textContent).toBe("Not due yet");
    expect(panel.text()).toContain("It's due by 7 October 2025.");
    await panel.tap("Use this");
    expect(panel.calls[0]?.[2]).toEqual({ kind: "filter-age", fitted: { by: "date", date: "2025-04-07" } });
  });

  test("a month is an interval, not an invented day", async () => {
    const { type, tap, text, focused, calls } = await atFilter();
    await type("Month", "12");
    await type("Year", "2024");
    await tap(show);
    expect(focused().textContent).toBe("It may be due");
    expect(text()).toMatch(/Age of the filter: 5\.\d to 6\.\d months\. It lasts 6 months\./);
    await tap("Use this");
    expect(calls[0]?.[2]).toEqual({ kind: "filter-age", fitted: { by: "month", month: "2024-12" } });
  });

  test("a season", async () => {
    const { pick, type, tap, focused, calls } = await atFilter();
    await pick("I know the season");
    await pick("Autumn");
    await type("Year", "2024");
    await tap(show);
    expect(focused().textContent).toBe("The filter is due");
    await tap("Use this");
    expect(calls[0]?.[2]).toEqual({
      kind: "filter-age",
      fitted: { by: "season", season: "autumn", year: 2024 },
    });
  });

  test("not since moving in is 'or more', with no upper end", async () => {
    const { pick, type, tap, text, calls } = await atFilter();
    await pick("Not since I moved in");
    await type("Month", "3");
    await type("Year", "2023");
    await tap(show);
    expect(text()).toMatch(/Age of the filter: 26\.\d months or more\./);
    await tap("Use this");
    expect(calls[0]?.[2]).toEqual({ kind: "filter-age", fitted: { by: "since-moving", month: "2023-03" } });
  });
});

describe("a year of two digits", () => {
  test.each([
    ["25", "2025-04"],
    [" 05 ", "2005-04"],
    ["99", "1999-04"],
  ])("'%s' is the latest such year, and stands there in full", async (year, month) => {
    const { type, tap, field, calls } = await atFilter();
    await type("Month", "4");
    await type("Year", year);
    await tap(show);
    expect(field("Year").value).toBe(month.slice(0, 4));
    await tap("Use this");
    expect(calls[0]?.[2]).toMatchObject({ fitted: { by: "month", month } });
  });
});

test("a month that was chosen stays chosen whichever way of saying when is picked next", async () => {
  const { type, tap, pick, field, focused } = await atFilter();
  await type("Month", "12");
  await type("Year", "24");
  await tap(show);
  expect(focused().textContent).toBe("It may be due");
  await pick("I know the day");
  expect([field("Day").value, field("Month").value, field("Year").value]).toEqual(["", "12", "2024"]);
});

test("the order of day, month and year is the country's", async () => {
  const order = async (locale: "en-GB" | "en-US") => {
    const { pick, all } = await atFilter(locale);
    await pick("I know the day");
    return all(".side-by-side label").map((label) => label.textContent);
  };
  expect(await order("en-GB")).toEqual(["Day", "Month", "Year"]);
  expect(await order("en-US")).toEqual(["Month", "Day", "Year"]);
});

test("an American autumn is called fall", async () => {
  const { pick, all } = await atFilter("en-US");
  await pick("I know the season");
  expect(all("label").map((label) => label.textContent)).toContain("Fall");
});

describe("a date that cannot be is refused in words, and stays there", () => {
  test.each([
    ["", "4", "2025", "Enter the day, the month and the year."],
    ["12abc", "4", "2025", "We can't read “12abc” as a number. Type whole numbers, such as 7 or 2024."],
    ["1.5", "4", "2025", "We can't read “1.5” as a number. Type whole numbers, such as 7 or 2024."],
    ["-3", "4", "2025", "We can't read “-3” as a number. Type whole numbers, such as 7 or 2024."],
    ["31", "2", "2025", "There's no such day. Check the day and the month."],
    ["0", "2", "2025", "There's no such day. Check the day and the month."],
    ["21", "6", "2025", "That day hasn't come yet. Today is 20 June 2025."],
    ["1", "6", "1989", "That's before 1990. Type the year in four digits, such as 2024."],
    ["1", "6", "4", "That's before 1990. Type the year in four digits, such as 2024."],
    ["1", "7", "25", "That day hasn't come yet. Today is 20 June 2025."],
    ["1/2", "6", "2024", "We can't read “1/2” as a number. Type whole numbers, such as 7 or 2024."],
    ["1", "6", "99999", "We can't read “99999” as a number. Type whole numbers, such as 7 or 2024."],
  ])("%s/%s/%s", async (day, month, year, said) => {
    const panel = await atFilter();
    await typeDate(panel, day, month, year);
    expect(panel.told("Day")).toBe(said);
    expect(panel.focused()).toBe(panel.field("Day"));
    expect([panel.field("Day").value, panel.field("Month").value, panel.field("Year").value]).toEqual([
      day,
      month,
      year,
    ]);
  });

  test("a month that was not chosen", async () => {
    const { type, tap, told } = await atFilter();
    await type("Year", "2024");
    await tap(show);
    expect(told("Year")).toBe("Choose the month and enter the year.");
  });

  test("a season to come", async () => {
    const { pick, type, tap, told } = await atFilter();
    await pick("I know the season");
    await pick("Winter");
    await type("Year", "2025");
    await tap(show);
    expect(told("Year")).toContain("hasn't come yet");
  });
});
