import { atModelOfBin, sessionAt } from "../expected.ts";
import { PanelPage } from "../panel-page.ts";
import { expect, test } from "../panel-test.ts";

const turns = {
  "the first question": () => null,
  "the complaints": () => sessionAt("opening.symptom"),
  "a gate": () =>
    sessionAt("filter-seated.gate-water-supply", {
      "opening.symptom": "no-ice",
      "flow-without-filter.have": "no-plug",
    }),
  "the flow test": () => sessionAt("flow-test.run", { "opening.symptom": "no-ice" }),
  "a thermometer": () => sessionAt("freezer-temperature.read"),
  "a wait": () => sessionAt("wait-for-ice.wait"),
  "the model code": atModelOfBin,
};

/** A page that magnifies itself on a phone: 240 px are left. `npm run soak` takes the wider ones too. */
const pages = [
  { width: 360, zoom: 1.5 },
  { width: 320, zoom: 1 },
  { width: 360, zoom: 1.25 },
].slice(0, process.env["SOAK"] === "all" ? 3 : 1);

for (const { width, zoom } of pages)
  test(`at ${width} px and zoom ${zoom} nothing sticks out of the panel or the page`, async ({ page }) => {
    await page.setViewportSize({ width, height: 740 });
    const panel = new PanelPage(page, { axe: false });
    const fits = async (what: string) => {
      await page.evaluate((by) => {
        document.body.style.setProperty("zoom", `${by}`);
      }, zoom);
      const out = await panel.host.evaluate((host) => {
        const edge = host.getBoundingClientRect().right + 1;
        const parts = [
          ...(host.shadowRoot?.querySelectorAll("button, h2, h3, p, label, input, select") ?? []),
        ];
        const outside = parts.filter((part) => part.getBoundingClientRect().right > edge);
        return [
          document.documentElement.scrollWidth - innerWidth,
          ...outside.map((part) => `${part.localName} ${part.textContent?.slice(0, 40)}`),
        ];
      });
      expect(out, what).toEqual([0]);
    };
    for (const [what, leave] of Object.entries(turns)) {
      const session = leave();
      if (session) await panel.openAt(session, "ways/one.html");
      else await panel.open("ways/one.html");
      await fits(what);
    }
    await panel.giveModel("TBY-744-K4.W");
    await fits("a part");
    await panel.reportDanger("gas");
    await fits("a stop");
  });

// WCAG 2.2, 2.4.11 and 1.4.10: 640 by 400 is a window of 1,280 by 800 at 200 %.
test("in a window as low as 400 px no answer lies over the question", async ({ page }) => {
  await page.setViewportSize({ width: 640, height: 400 });
  const panel = new PanelPage(page, { axe: false });
  await panel.openWhere("opening.changed");
  await panel.goTo("ice-maker-switch.look");
  const [step, answers] = await Promise.all(
    [".how", ".dock"].map((place) => panel.host.locator(place).first().boundingBox()),
  );
  expect((step?.y ?? 0) + (step?.height ?? 0)).toBeLessThanOrEqual(answers?.y ?? 0);
});
