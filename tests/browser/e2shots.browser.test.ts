import type { Answers } from "../session/drive.ts";
import { flowOf } from "../session/drive.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const cloggedFilter: Answers = {
  "opening.symptom": "little-ice",
  "fresh-ice.look": "small",
  "flow-test.run": flowOf(6),
  "flow-without-filter.prepare": "plug-fitted",
  "flow-without-filter.run": flowOf(25),
};
const out = "/tmp/w/shots/e2";
for (const [w, scheme] of [
  [360, "light"],
  [360, "dark"],
  [1280, "light"],
] as const)
  for (const kind of ["part", "valve", "professional", "nocause", "fixed", "stopped", "later"]) {
    test(`${kind} ${w} ${scheme}`, async ({ page }) => {
      test.setTimeout(120_000);
      await page.setViewportSize({ width: w, height: 740 });
      await page.emulateMedia({ colorScheme: scheme });
      const panel = new PanelPage(page);
      if (kind === "part" || kind === "valve") {
        await (kind === "part"
          ? panel.openWhere("part.model", cloggedFilter, undefined, "filter-clogged")
          : panel.openWhere("part.model", {}, undefined, "inlet-valve-faulty"));
        await panel.giveModel("TBY-744-K4.W");
        await page.waitForTimeout(600);
        if (kind === "part") await panel.button(panel.text("part.add")).first().tap();
      }
      if (kind === "professional") await panel.openWhere("professional.end", {}, undefined, "cooling-fault");
      if (kind === "nocause") await panel.openWhere("professional.end", { "opening.symptom": "no-ice" });
      if (kind === "fixed") await panel.openWhere("fixed.end");
      if (kind === "stopped") {
        await panel.openWhere("flow-test.run");
        await panel.reportDanger("gas");
      }
      if (kind === "later") await panel.openWhere("later.end");
      await page.waitForTimeout(700);
      console.log(kind, JSON.stringify(panel.turn.heading), await panel.host.evaluate((h) => h.scrollHeight));
      await page.screenshot({ path: `${out}/${kind}-${w}-${scheme}.png`, fullPage: true });
      expect(1).toBe(1);
    });
  }
