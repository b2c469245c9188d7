import { replay } from "../../src/session/index.ts";
import { linesOf } from "../../src/turn/index.ts";
import { guide, sessionAt } from "./expected.ts";
import { says } from "./greeting.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";
import { wayTo } from "./ways.ts";

test.describe("changing one's mind", () => {
  test("an earlier answer is changed after the panel has said what becomes of later ones", async ({
    panel,
  }) => {
    await panel.open();
    await panel.goTo("opening.changed", { "opening.symptom": "no-ice" });
    await panel.follow({}, 3);
    expect(linesOf(panel.session, panel.texts).find(({ turn }) => turn === "opening.changed")?.drops).toBe(2);
    await panel.change("opening.changed");
    expect(panel.turn.turn).toBe("opening.changed");
    expect(await panel.storedEvents()).toHaveLength(3);
    await panel.answer("moved");
    await panel.reload();
    expect((await panel.storedEvents()).at(3)).toMatchObject({ answer: "moved" });
  });

  test("the last answer drops no other and is changed at once", async ({ panel }) => {
    await panel.openWhere("opening.symptom");
    await panel.answer("no-ice");
    await panel.change("opening.symptom");
    expect(panel.turn.turn).toBe("opening.symptom");
  });

  test("keeping it changes nothing, and the focus goes back to where it came from", async ({ panel }) => {
    await panel.open();
    await panel.goTo("opening.changed");
    const kept = await panel.storedText();
    const change = panel.row(panel.text("checks.opening.danger.name"));
    await panel.button(panel.text("ui.earlier", { count: panel.session.log.events.length - 1 })).tap();
    await change.tap();
    await panel.seesTurn();
    await panel.button(panel.text("ui.keep")).tap();
    await expect(change).toBeFocused();
    expect(await panel.storedText()).toBe(kept);
    await panel.seesTurn();
  });

  test("a hazardous step is met again only behind its gates", async ({ panel }) => {
    const atFilter = sessionAt("filter-seated.look", { "opening.symptom": "no-ice" });
    await panel.openAt(replay(guide, wayTo(atFilter, "fill-tube.gate-plug-out")).session);
    await panel.change("filter-seated.look");
    expect(panel.turn.turn).toBe("filter-seated.gate-water-supply");
    await panel.confirmGate();
    expect(panel.turn.turn).toBe("filter-seated.look");
  });

  test("starting again asks first, and then forgets everything", async ({ panel }) => {
    await panel.open();
    await panel.goTo("ice-maker-switch.look");
    await panel.opensMenu("restart");
    await expect(panel.host.getByText(panel.text("ui.restart-ask"))).toBeFocused();
    await panel.seesTurn();
    await panel.button(panel.text("ui.cancel")).tap();
    expect(panel.turn.turn).toBe("ice-maker-switch.look");
    await panel.seesTurn();
    await panel.restart();
    await panel.reload();
    expect(panel.turn.turn).toBe("opening.danger");
    await expect(panel.host.getByRole("listitem")).toHaveCount(0);
  });
});

test.describe("double taps", () => {
  /** Both clicks within one task: no screen can have changed in between. */
  async function tapTwice(panel: PanelPage, name: string, second = name): Promise<void> {
    const other = await panel.button(second).elementHandle();
    await panel.button(name).evaluate((button, next) => {
      (button as HTMLElement).click();
      (next as HTMLElement).click();
    }, other);
  }

  test("an answer tapped twice is given once", async ({ panel }) => {
    await panel.openWhere("opening.changed", { "opening.symptom": "no-ice" });
    const before = await panel.storedEvents();
    await tapTwice(panel, panel.text("checks.opening.changed.answers.nothing"));
    await expect(panel.heading).not.toHaveText(panel.text("checks.opening.changed.ask"));
    const turn = "opening.changed";
    expect(await panel.storedEvents()).toEqual([...before, { type: "answered", turn, answer: "nothing" }]);
  });

  test("of two answers tapped at once the first counts", async ({ panel }) => {
    await panel.openWhere("control-lock.look");
    const words = (id: string) => panel.text(`checks.control-lock.look.answers.${id}`);
    await tapTwice(panel, words("no-lock"), words("lock-on"));
    const turn = "control-lock.look";
    await panel.took({ type: "answered", turn, answer: "no-lock", at: await panel.now() });
  });

  test("a gate confirmed twice is confirmed once, and only its own", async ({ panel }) => {
    await panel.openWhere("supply-line.gate-water-supply");
    for (const box of await panel.host.getByRole("checkbox").all()) await box.tap();
    await panel.confirmButton.evaluate((button) => {
      (button as HTMLElement).click();
      (button as HTMLElement).click();
    });
    await expect(panel.heading).toHaveText(panel.text("gates.pulled-out.ask"));
    for (const box of await panel.host.getByRole("checkbox").all()) await expect(box).not.toBeChecked();
  });

  test("a gate with a line left does not open, and says how many are left", async ({ panel }) => {
    await panel.openWhere("stop-tap.gate-water-supply");
    const kept = await panel.storedText();
    await expect(panel.confirmButton).toHaveCount(1);
    for (const box of (await panel.host.getByRole("checkbox").all()).slice(1)) await box.tap();
    await panel.confirmButton.tap();
    await expect(panel.host.getByText(panel.text("measure.gate-left", { count: 1 }))).toBeVisible();
    await panel.seesTurn();
    expect(await panel.storedText()).toBe(kept);
  });

  test("starting again and changing an answer at once do no more than the first of them", async ({
    panel,
  }) => {
    await panel.open();
    await panel.goTo("opening.changed");
    await panel.opensMenu("restart");
    await tapTwice(panel, panel.text("ui.restart-yes"));
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
    expect(await panel.storedEvents()).toEqual([]);
    await says(panel);
  });
});

test.describe("two panels on one page", () => {
  test("each keeps its own session by its name, over a reload too", async ({ page }) => {
    const kitchen = new PanelPage(page, { sessionName: "kitchen" });
    const garage = new PanelPage(page, { sessionName: "garage" });
    await kitchen.open("ways/two.html");
    await expect(kitchen.host.getByRole("region")).toHaveAccessibleName("Ice maker help, kitchen");
    await expect(garage.host.getByRole("region")).toHaveAccessibleName("Ice maker help, garage");
    await garage.seesTurn();
    await kitchen.says();
    await garage.answer("gas");
    await kitchen.seesTurn();
    await page.reload();
    await expect(kitchen.heading).toHaveText(kitchen.text("checks.opening.danger.ask"));
    await expect(garage.heading).toHaveText(garage.text("dangers.gas.heading"));
  });
});
