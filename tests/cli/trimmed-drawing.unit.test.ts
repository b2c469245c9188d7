import fc from "fast-check";
import { Window } from "happy-dom";
import * as preact from "preact";
import * as hooks from "preact/hooks";
import { afterEach, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { Panel } from "../../src/ui/chat/index.ts";
import { screens } from "../../src/ui/measure/index.ts";
import { fixtures } from "../ui/gallery/fixtures.ts";
import { servicesFor } from "../ui/gallery/services.ts";
import { textsOf } from "../ui/texts.ts";
import { buildTrimmed } from "./trimmed/build.ts";
import { createDrawer, type Drawing, sketchOf } from "./trimmed/sketch.ts";

/*
 * The library as published is what the trimmed one is measured by: what is drawn, in what order things come and go,
 * and what a hand does to it.
 */
type Parts = Drawing & Pick<Awaited<ReturnType<typeof buildTrimmed>>, "render" | "Panel" | "screens">;
const whole: Parts = { ...preact, ...hooks, Panel, screens };
let trimmed: Parts;

beforeAll(async () => {
  trimmed = await buildTrimmed();
}, 60_000);

beforeEach(() => {
  vi.stubGlobal("document", new Window().document);
  vi.stubGlobal("requestAnimationFrame", (draw: () => void) => setTimeout(draw, 16));
  vi.stubGlobal("cancelAnimationFrame", (frame: never) => clearTimeout(frame));
  // What a phone would sound or shake at.
  vi.spyOn(console, "log").mockReturnValue();
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** Draws one thing after another in one place, taps whatever can be tapped, and tells all that was to be seen. */
async function tell(parts: Parts, stages: (() => unknown)[], told: string[] = []): Promise<string[]> {
  const root = document.createElement("div");
  document.body.replaceChildren(root);
  const look = async () => {
    await vi.advanceTimersByTimeAsync(200);
    told.push(root.innerHTML);
  };
  for (const stage of [...stages, () => null]) {
    try {
      parts.render(stage() as never, root);
    } catch (problem) {
      told.push(`${problem}`);
    }
    await look();
    for (const each of [...root.querySelectorAll<HTMLElement>("button, summary, input[type=radio]")]) {
      // Within a drawing it is no button of the page.
      each.click?.();
      await look();
    }
  }
  return told;
}

describe("the trimmed script", () => {
  test("draws whatever may be drawn, and redraws it as something else, as the whole library does", async () => {
    const seen = { drawn: 0, thrown: 0 };
    await fc.assert(
      fc.asyncProperty(fc.array(sketchOf(4), { minLength: 2, maxLength: 5 }), async (sketches) => {
        const tellWith = (parts: Parts) => {
          const told: string[] = [];
          const draw = createDrawer(parts, told);
          const stages = sketches.map((each) => () => draw(each));
          return tell(parts, stages, told);
        };
        const [own, theirs] = [await tellWith(trimmed), await tellWith(whole)];
        expect(own).toEqual(theirs);
        seen[theirs.some((each) => each.startsWith("Error")) ? "thrown" : "drawn"]++;
      }),
      { numRuns: 300, seed: 5 },
    );
    expect(Math.min(seen.drawn, seen.thrown)).toBeGreaterThan(2);
  });

  test.each(Object.keys(fixtures))("draws the screen %s and what taps make of it", async (name) => {
    const stages = (parts: Parts) =>
      [name, "first"].map((fixture) => () => {
        const actions = new Proxy({} as never, { get: () => () => {} });
        const view = fixtures[fixture] as never;
        const given = { view, actions, services: servicesFor(fixture), texts: textsOf("en-GB") };
        const picture = ({ id }: { id: string }) => parts.h("img", { alt: id });
        return parts.h(parts.Panel, { ...given, screens: { ...parts.screens, picture } });
      });
    const [own, theirs] = [await tell(trimmed, stages(trimmed)), await tell(whole, stages(whole))];
    expect(own).toEqual(theirs);
  });
});
