// @vitest-environment happy-dom
import ICAL from "ical.js";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { waitTurn } from "../gallery/measure-fixtures.ts";
import { waitInsideTurn } from "../gallery/seal-fixtures.ts";
import { turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

let now = "";
// The wait runs from 9:00 on 20 June to 9:00 on 21 June 2025, British summer time.
const atWait = () => mount(viewOf(waitTurn), { services: { now: () => now } });

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

test("says how long is left, rounded up to the minute, and when it ends", async () => {
  now = "2025-06-20T13:40:20+01:00";
  const { text, all } = await atWait();
  expect(text()).toContain("19 h 20 min left");
  expect(all("time")[0]?.getAttribute("datetime")).toBe("2025-06-21T09:00:00+01:00");
});

test.each([
  ["2025-06-20T09:00:00+01:00", "24 hours left"],
  ["2025-06-21T08:00:00+01:00", "1 hour left"],
  ["2025-06-21T08:59:00+01:00", "1 minute left"],
])("says whole hours and single ones as one would, at %s", async (clock, said) => {
  now = clock;
  const { text } = await atWait();
  expect(text()).toContain(said);
});

test("leaves out the hours in the last one", async () => {
  now = "2025-06-21T08:48:30+01:00";
  const { text } = await atWait();
  expect(text()).toContain("12 minutes left");
  expect(text()).not.toContain("0 h");
});

test("keeps up with the clock by itself", async () => {
  now = "2025-06-20T13:40:00+01:00";
  const { text, settle } = await atWait();
  now = "2025-06-20T13:50:00+01:00";
  vi.advanceTimersByTime(30_000);
  await settle();
  expect(text()).toContain("19 h 10 min left");
});

test("is right at once when a page left open overnight is looked at again", async () => {
  now = "2025-06-20T13:40:00+01:00";
  const { text, settle } = await atWait();
  now = "2025-06-21T10:00:00+01:00";
  document.dispatchEvent(new Event("visibilitychange"));
  await settle();
  expect(text()).toContain("The wait is over");
});

test("takes its answers at any time, because ice may come early", async () => {
  now = "2025-06-20T13:40:00+01:00";
  const { tap, calls } = await atWait();
  await tap("There is ice");
  expect(calls).toEqual([["answer", "first-ice.wait", "ice"]]);
});

describe("the next question that comes by itself", () => {
  const next = viewOf(turnWith({ turn: "first-ice.came", heading: "Has ice come?" }));
  const leave = async (clock: string, elsewhere?: HTMLElement) => {
    vi.stubGlobal("requestAnimationFrame", (work: () => void) => setTimeout(work));
    now = "2025-06-21T08:59:00+01:00";
    const panel = await atWait();
    if (elsewhere) document.body.append(elsewhere);
    elsewhere?.focus();
    now = clock;
    await panel.show(next);
    vi.runAllTimers();
    return panel.focused();
  };
  afterEach(() => vi.unstubAllGlobals());

  test("has the focus once the wait is over, as after a tap", async () => {
    expect((await leave("2025-06-21T09:00:00+01:00")).textContent).toBe("Has ice come?");
  });

  test("has it not before: somebody has gone on in another tab", async () => {
    expect(await leave("2025-06-21T08:59:30+01:00")).toBe(document.body);
  });

  test("leaves it where somebody types elsewhere on the page", async () => {
    const search = document.createElement("input");
    expect(await leave("2025-06-21T09:00:00+01:00", search)).toBe(search);
  });
});

describe("what goes on inside", () => {
  beforeEach(() => vi.stubEnv("TZ", "Europe/London"));
  afterEach(() => vi.unstubAllEnvs());

  async function atStages(clock: string) {
    now = clock;
    const panel = await mount(viewOf(waitInsideTurn), { services: { now: () => now } });
    const stages = () =>
      panel.all(".stages li").map((stage) => ({
        when: stage.querySelector("b")?.textContent,
        said: stage.querySelector("p > span:last-child")?.textContent?.trim(),
        current: stage.getAttribute("aria-current"),
        done: stage.textContent?.includes("(done)"),
        ticked: stage.querySelector("path") !== null,
      }));
    const lookAgain = async (later: string) => {
      now = later;
      document.dispatchEvent(new Event("visibilitychange"));
      await panel.settle();
    };
    return { ...panel, stages, lookAgain };
  }

  test("is told in order: what is over, what is now, and when the rest comes", async () => {
    const { stages } = await atStages("2025-06-20T13:40:00+01:00");
    expect(stages()).toEqual([
      {
        when: "Friday 09:00",
        said: "The tray and the air around it get cold.",
        current: null,
        done: true,
        ticked: true,
      },
      {
        when: "Now",
        said: "Water runs into the tray and freezes.",
        current: "step",
        done: false,
        ticked: false,
      },
      {
        when: "Friday 15:00",
        said: "The tray tips its ice into the bin, again and again.",
        current: null,
        done: false,
        ticked: false,
      },
    ]);
  });

  test.each([
    ["2025-06-20T09:00:00+01:00", 0],
    ["2025-06-20T12:59:59+01:00", 0],
    ["2025-06-20T13:00:00+01:00", 1],
    ["2025-06-20T15:00:00+01:00", 2],
    ["2025-06-21T08:59:59+01:00", 2],
    ["2025-06-21T09:00:00+01:00", -1],
    // The phone's clock was set back since.
    ["2025-06-20T08:00:00+01:00", -1],
  ])("at %s its stage is number %i", async (clock, stage) => {
    const { stages } = await atStages(clock);
    expect(stages().findIndex(({ current }) => current === "step")).toBe(stage);
  });

  test("goes on by the clock, and is all done when the wait is over", async () => {
    const { stages, lookAgain } = await atStages("2025-06-20T10:00:00+01:00");
    expect(stages().map(({ done }) => done)).toEqual([false, false, false]);
    await lookAgain("2025-06-20T18:00:00+01:00");
    expect(stages().map(({ done }) => done)).toEqual([true, true, false]);
    await lookAgain("2025-06-21T10:00:00+01:00");
    expect(stages().map(({ done, ticked }) => done && ticked)).toEqual([true, true, true]);
  });

  test("tells the time of the place where the phone is", async () => {
    // 15:00 in London on that day is 10:00 in New York: five hours apart, both in summer time.
    vi.stubEnv("TZ", "America/New_York");
    const { stages } = await atStages("2025-06-20T08:40:00-04:00");
    expect(stages()[2]?.when).toBe("Friday 10:00");
  });

  test("is left out where nothing is known of it", async () => {
    now = "2025-06-20T13:40:00+01:00";
    const { text, all } = await atWait();
    expect(text()).not.toContain("inside");
    expect(all(".stages")).toEqual([]);
  });
});

describe("a reminder", () => {
  const offer = "Put it in my calendar";
  const atWaitOf = (wait: Partial<NonNullable<typeof waitTurn.wait>>, clock: string) => {
    now = clock;
    const base = waitTurn.wait as NonNullable<typeof waitTurn.wait>;
    return mount(viewOf({ ...waitTurn, wait: { ...base, ...wait } }), { services: { now: () => now } });
  };

  /** The entry that the button makes, as another program reads it. */
  async function entryAt(clock: string) {
    const made: Blob[] = [];
    vi.spyOn(URL, "createObjectURL").mockImplementation((blob) => `blob:${made.push(blob as Blob)}`);
    vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(() => {});
    const { tap } = await atWaitOf({}, clock);
    await tap(offer);
    const calendar = new ICAL.Component(ICAL.parse((await made[0]?.text()) ?? ""));
    return new ICAL.Event(calendar.getFirstSubcomponent("vevent") ?? undefined);
  }
  afterEach(() => {
    vi.restoreAllMocks();
    vi.unstubAllGlobals();
  });

  test("is an entry at the end of the wait, whatever the offset, that leads back to this page", async () => {
    const entry = await entryAt("2025-06-20T13:40:20+01:00");
    // 09:00 British summer time, one hour ahead of UTC.
    expect(entry.startDate.toString()).toBe("2025-06-21T08:00:00Z");
    expect(entry.summary).toBe(waitTurn.heading);
    expect(entry.uid).toBe("first-ice.wait-2025-06-21T09:00:00+01:00@fridgeside");
    expect(entry.component.getFirstPropertyValue("dtstamp")?.toString()).toBe("2025-06-20T12:40:20Z");
    expect(location.href).toMatch(/^http:/);
    expect(entry.component.getFirstPropertyValue("url")).toBe(location.href);
  });

  test.each(["file:///sdcard/page.html", "content://an.app/page", "about:blank"])(
    "names no address that a calendar could not go back to: %s",
    async (href) => {
      vi.stubGlobal("location", { href });
      const entry = await entryAt("2025-06-20T13:40:20+01:00");
      expect(entry.component.getFirstPropertyValue("url")).toBeNull();
    },
  );

  test("is not offered for a wait of minutes, nor when it is over", async () => {
    const short = await atWaitOf({ until: "2025-06-20T09:06:00+01:00" }, "2025-06-20T09:01:00+01:00");
    expect(short.buttons()).not.toContain(offer);
    const over = await atWaitOf({}, "2025-06-22T09:00:00+01:00");
    expect(over.buttons()).not.toContain(offer);
    const long = await atWaitOf({}, "2025-06-21T08:59:00+01:00");
    expect(long.buttons()).toContain(offer);
  });
});
