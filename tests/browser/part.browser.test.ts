import { type Answers, flowOf, strips } from "../session/drive.ts";
import { soundAnswer } from "../session/reach.ts";
import { codeWith } from "./expected.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

async function seesKindOnly(panel: PanelPage, kind: string): Promise<void> {
  const part = panel.text(`parts.${kind}.name`);
  await expect(panel.host.getByText(panel.text("part.unknown-model", { part }))).toBeVisible();
  await expect(panel.button(panel.text("part.add"))).toHaveCount(0);
  const help = panel.host.getByRole("link", {
    name: panel.text("part.ask-shop", { shop: "Larder Lane Spares" }),
  });
  await expect(help).toHaveAttribute("href", /\/help\.html$/);
}

const tornSeal: Answers = {
  "opening.symptom": "too-warm",
  "door-seal.look": "torn",
  "door-seal.paper-strip": strips(1, 5, 8),
  "door-seal.clean": "cleaned",
  "door-seal.strip-again": strips(1, 5, 8),
};

const cloggedFilter: Answers = {
  "opening.symptom": "little-ice",
  "fresh-ice.look": "small",
  "flow-test.run": flowOf(6),
  "flow-without-filter.prepare": "plug-fitted",
  "flow-without-filter.run": flowOf(25),
};

test.describe("a search that ends with a part", () => {
  test("a seal that lets the paper slip twice is a new seal for the code typed exactly", async ({
    panel,
  }) => {
    const code = codeWith("door-seal");
    await panel.open();
    await panel.goTo("door-seal.clean", tornSeal);
    await panel.reload();
    await panel.goTo("part.model", tornSeal, "seal-worn");
    await panel.reload();
    await panel.giveModel(code.toLowerCase().replace(/[ -]/g, ""), code);
    await panel.seesEnding("part", { cause: "seal-worn" });
    await panel.seesPartFor("door-seal", code);
    await expect(panel.host.getByText(panel.text("part.proves"))).not.toHaveCount(0);
    await panel.reload();
    await panel.seesPartFor("door-seal", code);
  });

  test("that was fitted, and it still happens, goes on with the search and is named as tried", async ({
    panel,
  }) => {
    await panel.open();
    await panel.goTo("part.model", tornSeal, "seal-worn");
    await panel.giveModel(codeWith("door-seal"));
    await panel.button(panel.text("part.no-help")).tap();
    await panel.took({ type: "trouble-returned", at: await panel.now() });
    await panel.seesTurn();
    await panel.reload();
    while (panel.turn.kind !== "ending")
      await panel.give(tornSeal[panel.turn.turn] ?? soundAnswer(panel.session));
    expect(panel.turn.ending?.part?.kind).not.toBe("door-seal");
    const parts = panel.text("parts.door-seal.name");
    await expect(panel.host.getByText(panel.text("part.tried", { parts }))).toBeVisible();
    await panel.seesTurn();
  });

  test("little water with the filter and enough without it is a new filter; a near miss is confirmed", async ({
    panel,
  }) => {
    const code = codeWith("water-filter");
    await panel.openWhere("flow-test.run", cloggedFilter);
    await panel.goTo("flow-without-filter.run", cloggedFilter);
    await panel.reload();
    await panel.goTo("part.model", cloggedFilter, "filter-clogged");
    const typed = `${code.slice(0, -1)}#`;
    await panel.findModel(typed);
    await expect(panel.host.getByText(panel.text("measure.model-near", { count: 1, typed }))).toBeVisible();
    // What differs is marked, and nothing was taken by itself.
    await expect(panel.host.locator("mark")).toHaveText([code.slice(-1)]);
    expect(panel.turn.turn).toBe("part.model");
    await panel.seesTurn();
    await panel.giveModel(typed, code);
    await panel.seesEnding("part", { cause: "filter-clogged" });
    await panel.seesPartFor("water-filter", code);
  });

  test("of two codes that look alike neither is taken without a tap on it", async ({ panel }) => {
    const [one, twin] = ["BLQ254NH/A0", "BLQ254NH/AO"];
    await panel.openWhere("part.model", tornSeal, undefined, "seal-worn");
    await panel.findModel(one as string);
    for (const code of [one, twin])
      await expect(panel.button(`${panel.text("measure.mine")}: ${code}`)).toBeVisible();
    await panel.button(panel.text("measure.not-mine")).tap();
    await expect(panel.host.getByText(panel.text("measure.code-compare"))).toBeVisible();
    await panel.seesTurn();
    await panel.giveModel(one as string, twin as string);
    await panel.seesPartFor("door-seal", twin as string);
  });

  test("an unknown code names the kind of part and the shop's people, never a product", async ({ panel }) => {
    await panel.openWhere("part.model", tornSeal, undefined, "seal-worn");
    await panel.findModel("QQQ 999 999");
    await expect(
      panel.host.getByText(panel.text("measure.model-unknown", { typed: "QQQ 999 999" })),
    ).toBeVisible();
    await panel.seesTurn();
    await panel.goOnWithoutModel("measure.without", "QQQ 999 999");
    await seesKindOnly(panel, "door-seal");
  });

  test("a plate that cannot be found names the kind of part and the shop's people", async ({ panel }) => {
    await panel.openWhere("part.model", tornSeal, undefined, "seal-worn");
    await panel.goOnWithoutModel("measure.plate-lost");
    await seesKindOnly(panel, "door-seal");
    await panel.reload();
    await seesKindOnly(panel, "door-seal");
  });

  test("a valve that gets water and lets none in is met behind both its gates, again after a reload", async ({
    panel,
  }) => {
    const dryTray: Answers = { "opening.symptom": "no-ice", "reset.test": "moved-dry" };
    await panel.openWhere("inlet-valve.gate-water-supply", dryTray);
    await panel.goTo("inlet-valve.arrives");
    await panel.reload();
    await panel.goTo("part.model", {}, "inlet-valve-faulty");
    const code = codeWith("inlet-valve");
    await panel.giveModel(code);
    await panel.seesEnding("part", { cause: "inlet-valve-faulty" });
    await panel.seesPartFor("inlet-valve", code);
  });
});
