import type { Session } from "../../src/session/index.ts";
import { violationsOn } from "./axe.ts";
import { flow } from "./expected.ts";
import { expect, test } from "./panel-test.ts";
import { sessionsAtEveryTurn } from "./sessions.ts";

let sessions = new Map<string, Session>();
test.beforeAll(() => {
  sessions = sessionsAtEveryTurn();
});

// The narrowest that WCAG 2.2 asks for: 320 CSS px without scrolling in two directions (1.4.10).
test.use({ viewport: { width: 320, height: 640 } });

const groups = [flow.opening.id, ...Object.keys(flow.checks), "part", "professional", "fixed", "stopped"];

for (const group of groups) {
  test(`every turn of ${group} comes back from storage, fits 320 to 1280 px and has no fault in light or dark`, async ({
    panel,
    page,
  }) => {
    const own = [...sessions].filter(([name]) => name.startsWith(`${group}.`));
    expect(own.length).toBeGreaterThan(0);
    for (const [name, session] of own) {
      await page.emulateMedia({ colorScheme: "light" });
      await page.clock.setSystemTime(session.log.events.at(-1)?.at ?? session.log.started);
      await panel.openAt(session);
      if (!name.includes(".gate-")) while (panel.turn.kind === "gate") await panel.confirmGate();
      else if (panel.turn.turn !== name) await panel.confirmGate();
      expect(panel.turn.turn).toBe(name.split(" ")[0]);
      if (panel.turn.kind === "model") await panel.goOnWithoutModel("measure.plate-lost");
      await page.emulateMedia({ colorScheme: "dark" });
      for (const width of [768, 1280]) {
        await page.setViewportSize({ width, height: 800 });
        const tooWide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(tooWide, `${name} at ${width} px`).toBeLessThan(1);
      }
      expect(await violationsOn(page, "dark, wide"), `${name} in the dark`).toEqual([]);
      await page.setViewportSize({ width: 320, height: 640 });
    }
  });
}
