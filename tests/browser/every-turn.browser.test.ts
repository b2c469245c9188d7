import type { Session } from "../../src/session/index.ts";
import { allTurns } from "../gallery/find-sessions.ts";
import { sessionsOfGallery } from "../gallery/read-gallery.ts";
import { colourRules, violationsOn } from "./axe.ts";
import { flow } from "./expected.ts";
import { isInReach, phones } from "./in-reach.ts";
import { expect, test } from "./panel-test.ts";

// In one worker, one after the other: what was in reach is counted over all of them.
test.describe.configure({ mode: "default" });
let sessions = new Map<string, Session>();
test.beforeAll(() => {
  if (sessions.size === 0) sessions = sessionsOfGallery(allTurns());
});

// The narrowest that WCAG 2.2 asks for: 320 CSS px without scrolling in two directions (1.4.10).
test.use({ viewport: { width: 320, height: 640 } });

/** Of the turns looked at: those whose next thing to tap is out of sight, by the phone's width. */
const outOfReach = new Map(phones.map(({ width }) => [width, [] as string[]]));
let looked = 0;

const groups = [flow.opening.id, ...Object.keys(flow.checks), "part", "professional", "fixed", "stopped"];

for (const group of groups) {
  test(`every turn of ${group} comes back from storage, fits 320 to 1280 px and has no fault in light or dark`, async ({
    panel,
    page,
  }) => {
    const seen = new Set<string>();
    const looksAtTurn = async () => {
      const { turn } = panel.turn;
      if (seen.has(turn)) return;
      seen.add(turn);
      expect(await violationsOn(page), turn).toEqual([]);
      for (const width of [768, 1280]) {
        await page.setViewportSize({ width, height: 800 });
        const tooWide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(tooWide, `${turn} at ${width} px`).toBeLessThan(1);
      }
      looked++;
      for (const phone of phones) {
        await page.setViewportSize(phone);
        if (!(await isInReach(panel.host))) outOfReach.get(phone.width)?.push(turn);
      }
      await page.setViewportSize({ width: 320, height: 640 });
      await page.emulateMedia({ colorScheme: "dark" });
      expect(await violationsOn(page, "dark", colourRules), `${turn} in the dark`).toEqual([]);
      await page.emulateMedia({ colorScheme: "light" });
    };
    // A gate is met on the way to a turn behind it.
    const own = [...sessions].filter(([name]) => name.startsWith(`${group}.`));
    expect(own.length).toBeGreaterThan(0);
    for (const [name, session] of own) {
      // A wait that is looked at later is over.
      await page.clock.setSystemTime(session.log.events.at(-1)?.at ?? session.log.started);
      // A page without a list of parts asks for no model code.
      await panel.openAt(session, name.startsWith("part.") ? "with-catalogue.html" : "plain.html");
      while (panel.turn.kind === "gate") {
        await looksAtTurn();
        await panel.confirmGate("at once");
      }
      await panel.goOnTo(name.split(" ")[0] ?? "");
      expect(panel.turn.turn).toBe(name.split(" ")[0]);
      if (panel.turn.kind === "model") {
        // By a key: the test runner's finger does not scroll a page that is wider than its window far enough.
        await panel.button(panel.text("measure.plate-lost")).press("Enter");
        const { turn } = panel.turn;
        await panel.took({ type: "model-given", turn, code: null, typed: "", at: await panel.now() });
      }
      // Endings differ by their cause.
      if (panel.turn.kind === "ending") seen.clear();
      await looksAtTurn();
    }
    for (const gate of flow.checks[group]?.gates ?? []) expect([...seen]).toContain(`${group}.gate-${gate}`);
  });
}

test("the next thing to tap is in sight without scrolling on most turns", () => {
  for (const { width, height, least } of phones) {
    const missed = outOfReach.get(width) ?? [];
    const share = 1 - missed.length / looked;
    console.log(
      `${width} by ${height}: ${(100 * share).toFixed(1)} % of ${looked} turns; not ${missed.join(", ")}`,
    );
    expect.soft(share, `${width} by ${height}`).toBeGreaterThanOrEqual(least);
  }
});
