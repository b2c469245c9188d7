// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { Reminder } from "../../../src/panel/screens/reading/reminder.tsx";
import { textsOf } from "../texts.ts";

let made: Blob[] = [];
/** Each link that was followed, with what was told of it at that moment. */
let followed: { href: string; download: string; inPanel: boolean }[] = [];

beforeEach(() => {
  made = [];
  followed = [];
  vi.useFakeTimers();
  vi.spyOn(URL, "createObjectURL").mockImplementation((blob) => `blob:${made.push(blob as Blob)}`);
  vi.spyOn(URL, "revokeObjectURL").mockImplementation(() => {});
  vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(function (this: HTMLAnchorElement) {
    followed.push({ href: this.href, download: this.download, inPanel: this.getRootNode() !== document });
  });
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

/** A button in a shadow root, as in the panel. */
async function mountReminder(file = () => "BEGIN:VCALENDAR") {
  const host = document.createElement("div");
  document.body.replaceChildren(host);
  const root = host.attachShadow({ mode: "open" });
  await act(() => render(<Reminder file={file} name="wait" texts={textsOf("en-GB")} />, root as never));
  return {
    root,
    tap: () => act(() => root.querySelector("button")?.click()),
    status: () => root.querySelector('[role="status"]')?.textContent,
  };
}

test("nothing is made before it is wanted", async () => {
  const file = vi.fn(() => "");
  const { status } = await mountReminder(file);
  expect(file).not.toHaveBeenCalled();
  expect(made).toEqual([]);
  expect(status()).toBe("");
});

test("a tap hands over a calendar file with a name, by a link that is gone again", async () => {
  const { tap, root, status } = await mountReminder();
  await tap();
  expect(followed).toEqual([{ href: "blob:1", download: "wait.ics", inPanel: true }]);
  // RFC 5545 section 8.1: the media type of a calendar, its text in UTF-8.
  expect(made[0]?.type).toBe("text/calendar;charset=utf-8");
  expect(await made[0]?.text()).toBe("BEGIN:VCALENDAR");
  expect(root.querySelector("a")).toBeNull();
  expect(status()).toBe("The calendar file is ready. Open it to add the reminder.");
});

test("a second wish gets another file", async () => {
  const { tap } = await mountReminder();
  await tap();
  expect(made).toHaveLength(1);
  await tap();
  expect(made).toHaveLength(2);
});

test("the file is let go once every phone has read it", async () => {
  const { tap } = await mountReminder();
  await tap();
  expect(URL.revokeObjectURL).not.toHaveBeenCalled();
  vi.advanceTimersByTime(60_000);
  expect(URL.revokeObjectURL).toHaveBeenCalledExactlyOnceWith("blob:1");
});

describe("a browser", () => {
  test("that makes no files says so, and may be asked again", async () => {
    const { tap, status } = await mountReminder();
    vi.spyOn(URL, "createObjectURL").mockImplementationOnce(() => {
      throw new TypeError("no files here");
    });
    await tap();
    expect(status()).toBe("This browser can't make the file. Please note the time yourself.");
    await tap();
    expect(status()).toContain("ready");
  });

  test.each([
    ["opens it in a window of its own", {}, "ready"],
    ["lets no window open, and says so", null, "can't make the file"],
  ])("that knows no downloads %s", async (_, opened, said) => {
    const { tap, status } = await mountReminder();
    const open = vi.spyOn(window, "open").mockReturnValue(opened as never);
    vi.stubGlobal("open", open);
    const create = document.createElement.bind(document);
    vi.spyOn(document, "createElement").mockImplementation((name: string) =>
      // A link without the property, as an old browser has it.
      name === "a" ? ({ href: "" } as never) : create(name),
    );
    await tap();
    expect(open).toHaveBeenCalledExactlyOnceWith("blob:1");
    expect(status()).toContain(said);
    vi.unstubAllGlobals();
  });
});
