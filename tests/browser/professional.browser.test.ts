import { type Answers, celsius, flowOf } from "../session/drive.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** Says 'not sure' wherever that can be said, and 'can't' elsewhere. */
async function knowsNothing(panel: PanelPage): Promise<void> {
  const { answers } = panel.turn;
  const ids = answers.map(({ id }) => id);
  await panel.answer(["not-sure", "cannot", ...ids].find((id) => ids.includes(id)) ?? "");
}

test.describe("a search that ends with a professional", () => {
  test("a freezer that stays warm at its coldest setting is an appliance engineer's", async ({ panel }) => {
    const warm: Answers = {
      "opening.symptom": "no-ice",
      "freezer-temperature.read": celsius(-5),
      "freezer-temperature.colder": "already-coldest",
    };
    await panel.open();
    await panel.goTo("freezer-temperature.colder", warm);
    await panel.reload();
    await panel.goTo("professional.end", warm, "cooling-fault");
    await panel.seesEnding("professional", { cause: "cooling-fault", who: "appliance-engineer" });
  });

  test("too little water with and without the filter is a plumber's", async ({ panel }) => {
    const weak: Answers = {
      "opening.symptom": "no-ice",
      "flow-test.run": flowOf(6),
      "flow-without-filter.prepare": "plug-fitted",
      "flow-without-filter.run": flowOf(6),
    };
    await panel.openWhere("flow-test.run", weak);
    await panel.goTo("supply-line.look", weak);
    await panel.reload();
    await panel.goTo("professional.end", weak, "supply-weak");
    await panel.seesEnding("professional", { cause: "supply-weak", who: "plumber" });
  });

  test("somebody who asks for a person gets one, with the answers kept", async ({ panel }) => {
    await panel.openWhere("door-closing.look");
    await panel.answer("closes");
    await panel.reload();
    await panel.askForHelp();
    await panel.seesEnding("professional", { who: "shop" });
    await expect(
      panel.host.getByText(panel.text("checks.door-closing.look.answers.closes")).first(),
    ).toBeVisible();
    await panel.reload();
    await panel.seesEnding("professional", { who: "shop" });
  });

  test("somebody who is sure of nothing is led to a person, and named no part", async ({ panel }) => {
    await panel.open();
    await panel.goTo("opening.changed", { "opening.symptom": "no-ice" });
    for (let turns = 0; panel.turn.kind !== "ending" && turns < 40; turns++) {
      await knowsNothing(panel);
      if (turns === 5) await panel.reload();
    }
    await panel.seesEnding("professional", { who: "appliance-engineer" });
    expect(panel.turn.ending?.part).toBeNull();
    await expect(panel.button(panel.text("part.add"))).toHaveCount(0);
  });

  test("what this helper does not cover goes to the shop at once", async ({ panel }) => {
    await panel.open();
    await panel.follow({
      "opening.danger": "none",
      "opening.symptom": "not-sure",
      "opening.bin": "something-else",
      "opening.wet": "dry",
    });
    await panel.seesEnding("professional", { cause: "not-covered", who: "shop" });
  });
});
