import { vi } from "vitest";
import { flowTurn } from "./gallery/measure-fixtures.ts";
import { viewOf } from "./gallery/turns.ts";
import { mount } from "./mount.tsx";

const START = Date.parse("2025-06-20T10:00:00Z");
export const volume = "Water in the jug";
export const show = "Show what it means";

/** A panel at the flow turn with a clock that only the test moves; timers tick on their own. */
export async function atFlow(locale: "en-GB" | "en-US" = "en-GB") {
  let now = START;
  const release = vi.fn();
  const signal = vi.fn();
  const panel = await mount(viewOf(flowTurn), {
    locale,
    services: {
      now: () => new Date(now).toISOString(),
      keepAwake: async () => release,
      signal,
    },
  });
  const pass = async (seconds: number) => {
    now += seconds * 1000;
    vi.advanceTimersByTime(200);
    await panel.settle();
  };
  /** A whole run: start, let the time pass, say how much water came out. */
  const run = async (amount: string, seconds = 10) => {
    await panel.tap("Start");
    await pass(seconds);
    await panel.tap(/Next/);
    await panel.type(
      panel.all("label").some((each) => each.textContent === volume) ? volume : "Water in the cup",
      amount,
    );
    await panel.tap(show);
  };
  return { ...panel, pass, run, release, signal };
}

/** The reading that was used, of the calls of a panel. */
export const used = (calls: unknown[][]) => calls.find(([action]) => action === "measure")?.[2];
