import { flow } from "./expected.ts";
import { expect, test } from "./panel-test.ts";

const dangers = Object.entries(flow.opening.turns.danger?.answers ?? {})
  .filter(([, outcome]) => outcome.danger)
  .map(([id]) => id);

test.describe("a search that stops for safety", () => {
  for (const danger of dangers) {
    test(`${danger} at the start stops everything and says what to do now`, async ({ panel }) => {
      await panel.open();
      await panel.answer(danger);
      await panel.seesEnding("stopped");
      await expect(panel.heading).toHaveText(panel.text(`dangers.${danger}.heading`));
      await panel.reload();
      await panel.seesEnding("stopped");
      // Nothing leads on from here but a new start.
      await expect(panel.button(panel.text("ui.ice"))).toHaveCount(0);
      await panel.restart();
      expect(panel.turn.turn).toBe("opening.danger");
    });
  }

  test("who is not sure twice is stopped, and not before", async ({ panel }) => {
    await panel.open();
    await panel.answer("not-sure");
    expect(panel.turn.turn).toBe("opening.danger-again");
    await panel.answer("not-sure");
    await panel.seesEnding("stopped");
    await expect(panel.heading).toHaveText(panel.text("dangers.not-sure.heading"));
  });

  test("danger in the middle of a gated step stops, and stays so after a reload", async ({ panel }) => {
    await panel.openWhere("filter-seated.gate-water-supply", {});
    await panel.confirmGate();
    await panel.reload();
    await panel.reportDanger("water-near-socket");
    await panel.seesEnding("stopped");
    await panel.reload();
    await panel.seesEnding("stopped");
    await expect(panel.heading).toHaveText(panel.text("dangers.water-near-socket.heading"));
  });

  test("danger can be reported from behind an ending", async ({ panel }) => {
    await panel.openWhere("professional.end", {}, undefined, "defrost-fault");
    await panel.reportDanger("burning");
    await panel.seesEnding("stopped");
  });
});
