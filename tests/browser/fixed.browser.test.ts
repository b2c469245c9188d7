import { expect, test } from "./panel-test.ts";

test.describe("a search that ends with ice", () => {
  test("an ice maker that was off is switched on, and the ice found next day ends it", async ({ panel }) => {
    await panel.open();
    await panel.goTo("ice-maker-switch.look", { "opening.symptom": "no-ice" });
    await panel.answer("off");
    await panel.reload();
    await panel.answer("switched-on");
    await panel.goTo("wait-for-ice.wait", { "reset.find": "not-sure" });
    await panel.comeBackAfter(25);
    await panel.seesNotice("wait-over");
    expect(panel.turn.turn).toBe("wait-for-ice.came");
    await panel.reload();
    await panel.answer("ice-came");
    await panel.seesEnding("fixed", { cause: "switched-off" });
    await panel.reload();
    await panel.seesEnding("fixed", { cause: "switched-off" });
  });

  test("ice that comes in the middle of a later check is credited to what was put right last", async ({
    panel,
  }) => {
    await panel.openWhere("ice-under-maker.look", { "opening.symptom": "no-ice" });
    await panel.reload();
    await panel.answer("ice-there");
    await panel.confirmGate("at once");
    await panel.answer("removed");
    await panel.reportIce();
    await panel.seesEnding("fixed", { cause: "ice-jammed" });
  });

  test("ice can be reported after a professional was named, as long as the panel is open", async ({
    panel,
  }) => {
    await panel.openWhere("professional.end", {}, undefined, "defrost-fault");
    await panel.seesEnding("professional", { cause: "defrost-fault", who: "appliance-engineer" });
    await panel.reload();
    await panel.reportIce();
    await panel.seesEnding("fixed");
  });
});
