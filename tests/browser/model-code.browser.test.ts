import { bounds } from "../../src/session/index.ts";
import { expect, test } from "./panel-test.ts";

test.describe("the model code", () => {
  test.beforeEach(({ panel }) => panel.openWhere("part.model", {}, undefined, "seal-worn"));

  test("what is no code is told at the field, stays typed, and is not kept", async ({ panel }) => {
    const kept = await panel.storedText();
    const field = panel.host.getByRole("textbox", { name: panel.text("measure.code-label") });
    for (const [typed, said] of [
      ["", "measure.code-empty"],
      ["W".repeat(300), "measure.code-too-long"],
      ["🧊🧊", "measure.code-no-code-characters"],
      ["---", "measure.code-no-code-characters"],
      ["<img src=x onerror=alert(1)>", "measure.code-no-code-characters"],
    ] as const) {
      await panel.findModel(typed);
      await expect(field).toHaveAccessibleDescription(panel.text(said));
      await expect(field).toHaveValue(typed.slice(0, bounds.typed + 1));
      await expect(field).toBeFocused();
      await panel.seesTurn();
    }
    expect(await panel.storedText()).toBe(kept);
  });

  test("of a paste without end only the beginning gets into the field, and it is refused", async ({
    panel,
    page,
  }) => {
    const field = panel.host.getByRole("textbox", { name: panel.text("measure.code-label") });
    await field.focus();
    // Marks in a row cost the square of their number to put into order.
    await page.keyboard.insertText(`W${"\u0316\u0301".repeat(50_000)}`);
    expect((await field.inputValue()).length).toBe(bounds.typed + 1);
    await page.keyboard.press("Enter");
    await expect(field).toHaveAccessibleDescription(panel.text("measure.code-too-long"));
    await panel.seesTurn();
  });

  for (const typed of ["<b>QQQ 99</b>", "QQ🧊99 99", "{{count}} $t(ui.danger)"]) {
    test(`"${typed}" is an unknown code, shown as it was typed`, async ({ panel }) => {
      await panel.findModel(typed);
      await expect(panel.host.getByText(typed)).toBeVisible();
      await panel.seesTurn();
    });
  }

  test("what was found goes away as soon as the code is changed", async ({ panel }) => {
    await panel.findModel("BLQ254NH/A0");
    const mine = panel.host.getByRole("button", { name: new RegExp(`^${panel.text("measure.mine")}`) });
    await expect(mine).not.toHaveCount(0);
    await panel.host.locator(".turn").getByRole("textbox").fill("BLQ254NH/A");
    await expect(mine).toHaveCount(0);
  });
});
