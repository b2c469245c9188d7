// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { atFlow, show, used, volume } from "../../../tests/panel/at-flow.tsx";
import { clickAt } from "../../../tests/panel/finger.ts";

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe("the stopwatch", () => {
  test("goes by the clock, not by the ticks of a page that a phone has put to sleep", async () => {
    const { tap, pass, text, calls, type } = await atFlow();
    await tap("Start");
    await pass(4);
    expect(text()).toContain("6Stop");
    await pass(9);
    await tap(/Next/);
    await type(volume, "200");
    await tap(show);
    await tap("Use this");
    expect(used(calls)).toEqual({ kind: "flow", runs: [{ volume: 200, unit: "ml", seconds: 13 }] });
  });

  test("signals the end and lets the screen sleep again", async () => {
    const { tap, pass, signal, release, settle } = await atFlow();
    expect(signal.mock.calls).toEqual([["soon"]]);
    await tap("Start");
    expect(signal).toHaveBeenLastCalledWith("tick");
    await pass(10);
    await settle();
    expect(signal).toHaveBeenLastCalledWith("end");
    expect(release).toHaveBeenCalledTimes(1);
  });

  test("waits when it is over, for as long as it takes, and says so", async () => {
    const { tap, pass, text, all, calls, type } = await atFlow();
    await tap("Start");
    await pass(10);
    await pass(60);
    expect(text()).toContain("0Next");
    expect(all(".steps [role=status]").map((region) => region.textContent)).toEqual([
      "Time's up. Stop the water.",
    ]);
    await tap(/Next/);
    await type(volume, "200");
    await tap(show);
    await tap("Use this");
    expect(used(calls)).toEqual({ kind: "flow", runs: [{ volume: 200, unit: "ml", seconds: 10 }] });
  });

  test("stopped early, it keeps the time that truly passed", async () => {
    const { tap, pass, type, calls } = await atFlow();
    await tap("Start");
    await pass(6.4);
    await tap(/Stop/);
    await type(volume, "120");
    await tap(show);
    await tap("Use this");
    expect(used(calls)).toEqual({ kind: "flow", runs: [{ volume: 120, unit: "ml", seconds: 6.4 }] });
  });

  test("a wet thumb that slips twice on Start does not stop it", async () => {
    const { button, text } = await atFlow();
    await clickAt(button("Start"), 1000);
    await clickAt(button(/Stop/), 1300);
    expect(text()).toContain("10Stop");
  });

  test("stopped too early to tell, it says so and can start again", async () => {
    const { tap, pass, text, buttons } = await atFlow();
    await tap("Start");
    await pass(1.5);
    await tap(/Stop/);
    expect(text()).toContain(
      "That was 1.5 seconds, which is too short. Run the water for at least 3 seconds.",
    );
    expect(buttons()).toContain("Start");
  });

  test("announces its start, and not every second", async () => {
    const { tap, pass, all } = await atFlow();
    await tap("Start");
    const said = () => all(".steps [role=status]").map((region) => region.textContent);
    expect(said()).toEqual(["Started. 10 seconds."]);
    await pass(3);
    expect(said()).toEqual(["Started. 10 seconds."]);
    expect(all(".count")[0]?.getAttribute("aria-hidden")).toBe("true");
  });
});

describe("how much water", () => {
  async function atVolume() {
    const panel = await atFlow();
    await panel.tap("Start");
    await panel.pass(10);
    await panel.tap(/Next/);
    return panel;
  }
  const slider = (all: Awaited<ReturnType<typeof atVolume>>["all"]) =>
    all<HTMLInputElement>('[type="range"]')[0];

  test("the jug follows what is typed", async () => {
    const { type, all } = await atVolume();
    await type(volume, "145");
    expect(slider(all)?.value).toBe("145");
    expect(slider(all)?.getAttribute("aria-valuetext")).toBe("145 ml");
  });

  test("what is typed follows the jug", async () => {
    const { slide, field } = await atVolume();
    await slide(230);
    expect(field(volume).value).toBe("230");
  });

  test("the drawn level stands at the mark of its amount", async () => {
    const { type, all } = await atVolume();
    const level = () => all(".level")[0]?.getAttribute("d")?.split(" ")[1]?.replace(/H.*/, "");
    const markOf = (amount: string) => {
      const number = all("text").find((each) => each.textContent === amount);
      return number?.parentElement
        ?.querySelector("path")
        ?.getAttribute("d")
        ?.match(/ ([\d.]+)h/)?.[1];
    };
    for (const amount of ["100", "300", "500"]) {
      await type(volume, amount);
      expect(level()).toBe(markOf(amount));
    }
  });

  test("more than the jug holds fills it to the brim and leaves the typed text alone", async () => {
    const { type, all, field } = await atVolume();
    await type(volume, "900");
    expect(slider(all)?.value).toBe("500");
    expect(field(volume).value).toBe("900");
  });

  test("kitchen scales have no jug, and grams are used as they are", async () => {
    const { type, pick, tap, all, calls } = await atVolume();
    await pick("g");
    expect(slider(all)).toBeUndefined();
    await type(volume, "212");
    await tap(show);
    await tap("Use this");
    expect(used(calls)).toEqual({ kind: "flow", runs: [{ volume: 212, unit: "g", seconds: 10 }] });
  });

  test.each([
    ["", "Enter how much water there is. If none came out, enter 0."],
    ["12abc", "We can't read “12abc” as a number. Type digits, such as 150, 1.5 or 1/2."],
    ["1,500", "We can't read “1,500” as a number. Type digits, such as 150, 1.5 or 1/2."],
    ["-5", "Enter 0 or more."],
    [
      "99999",
      "99999 ml is more than a dispenser gives in that time. Check the unit, and enter 2000 ml at most.",
    ],
  ])("'%s' is refused in words beside the field, and stays there", async (typed, said) => {
    const { type, tap, told, field, focused, calls } = await atVolume();
    await type(volume, typed);
    await tap(show);
    expect(told(volume)).toBe(said);
    expect(field(volume).value).toBe(typed);
    expect(field(volume).getAttribute("aria-invalid")).toBe("true");
    expect(focused()).toBe(field(volume));
    expect(calls).toEqual([]);
  });

  test("a refusal goes away as soon as the entry is edited", async () => {
    const { type, tap, told } = await atVolume();
    await type(volume, "x");
    await tap(show);
    await type(volume, "1");
    expect(told(volume)).toBe("");
  });

  test("reads 0 ml as an empty jug, not as an empty answer", async () => {
    const { type, tap, text } = await atVolume();
    await type(volume, "0");
    await tap(show);
    expect(text()).toContain("Too little water comes out");
  });

  test("takes a decimal comma", async () => {
    const { type, tap, calls } = await atVolume();
    await type(volume, "187,5");
    await tap(show);
    await tap("Use this");
    expect(used(calls)).toEqual({ kind: "flow", runs: [{ volume: 187.5, unit: "ml", seconds: 10 }] });
  });

  test("American kitchens reach for fluid ounces first", async () => {
    const { run, tap, calls } = await atFlow("en-US");
    await run("6");
    await tap("Use this");
    expect(used(calls)).toEqual({ kind: "flow", runs: [{ volume: 6, unit: "us-fl-oz", seconds: 10 }] });
  });
});
