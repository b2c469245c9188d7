import { mkdirSync } from "node:fs";
import type { Page } from "@playwright/test";
import { soundAnswer } from "../session/reach.ts";
import { codeWith } from "./expected.ts";
import { journeys } from "./journeys.ts";
import { test } from "./panel-test.ts";

/**
 * `SHOTS=<folder> npm run browser journeys` also takes a picture of every screen on the way, light and dark, the whole
 * page of each.
 */
const shots = process.env.SHOTS;

for (const [scenario, journey] of Object.entries(journeys)) {
  const { sees, takesBack = [], reloadsAt, reports = [], part, ending } = journey;

  test(`${scenario}: from a fresh page to ${ending.cause ?? ending.outcome}, as the signs have it`, async ({
    page,
    panel,
  }) => {
    const take = createCamera(page, scenario);
    await panel.open();
    await take(panel.turn.turn);
    let isReloaded = false;
    let isTakenBack = false;
    while (panel.turn.kind !== "ending" && panel.turn.kind !== "model") {
      const { turn } = panel.turn;
      if (turn === reloadsAt && !isReloaded) {
        isReloaded = true;
        await panel.reload();
      } else if (turn === reports[0]) {
        await panel.reportDanger(reports[1] as string);
      } else if (turn === takesBack[0] && !isTakenBack) {
        isTakenBack = true;
        await panel.give(takesBack[1] as string);
        await panel.follow(sees, 1);
        await panel.change(turn);
      } else {
        await panel.give(sees[turn] ?? soundAnswer(panel.session));
      }
      await take(panel.turn.turn);
    }
    if (part) {
      const code = codeWith(part);
      await panel.giveModel(code);
      await panel.seesPartFor(part, code);
      await take(panel.turn.turn);
    }
    const { outcome, ...more } = ending;
    await panel.seesEnding(outcome, more);
  });
}

/** Takes numbered pictures of a journey, if they are asked for. */
function createCamera(page: Page, scenario: string): (turn: string) => Promise<void> {
  let count = 0;
  if (!shots) return async () => {};
  mkdirSync(shots, { recursive: true });
  return async (turn) => {
    count++;
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      const name = `${scenario}-${`${count}`.padStart(2, "0")}-${turn}-${colorScheme}.png`;
      await page.screenshot({ path: `${shots}/${name}`, fullPage: true, animations: "disabled" });
    }
    await page.emulateMedia({ colorScheme: null });
  };
}
