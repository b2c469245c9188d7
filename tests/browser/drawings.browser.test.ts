import type { Page } from "@playwright/test";
import { drawingsOf } from "../../src/embed/drawings-ahead.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

/** Notes the drawings that come, by their ids. */
function watchDrawings(page: Page): Set<string> {
  const came = new Set<string>();
  page.on("requestfinished", (request) => {
    const [, id] = /\/parts\/picture-en-GB-(.+)-[\da-f]{8}\.json$/.exec(request.url()) ?? [];
    if (id) came.add(id);
  });
  return came;
}

const drawing = (panel: PanelPage) => panel.host.locator(".turn figure svg");

/** Goes on until a turn whose drawing was not asked for when `seen` was written down. */
async function goToUnseen(panel: PanelPage, seen: ReadonlySet<string>): Promise<string> {
  for (let turns = 0; turns < 12; turns++) {
    const { picture, kind } = panel.turn;
    if (picture && kind === "choice" && !seen.has(picture)) return picture;
    await panel.follow({}, 1);
  }
  throw new Error("No turn with a drawing of its own came up");
}

test.describe("drawings of turns to come", () => {
  test("are fetched in idle time, and shown where the connection is lost meanwhile", async ({
    panel,
    page,
  }) => {
    const came = watchDrawings(page);
    await panel.openWhere("power.light", { "opening.symptom": "no-ice" });
    const seen = new Set([panel.turn.picture ?? ""]);
    await panel.hasEverything();
    await expect(async () => {
      await page.clock.runFor(1000);
      expect(drawingsOf(panel.session).filter((id) => !came.has(id))).toEqual([]);
    }).toPass();
    await page.context().setOffline(true);
    const id = await goToUnseen(panel, seen);
    await expect(drawing(panel)).toHaveAttribute("aria-label", panel.text(`pictures.shows.${id}`));
    await expect(drawing(panel).locator("path").first()).toBeVisible();
  });

  test("do not come before all else has, nor in the opening", async ({ panel, page }) => {
    const order: string[] = [];
    page.on("request", (request) => order.push(new URL(request.url()).pathname));
    const came = watchDrawings(page);
    await panel.open();
    await panel.hasEverything();
    await page.clock.runFor(2000);
    expect([...came]).toEqual([]);
    await panel.openWhere("power.light", { "opening.symptom": "no-ice" });
    const own = panel.turn.picture ?? "";
    await page.reload();
    // What the page before had asked for is none of this one's.
    const asked = () => order.slice(order.findLastIndex((path) => path.endsWith("/index.html")));
    const isAhead = (path: string) => /\/picture-/.test(path) && !path.includes(own);
    await expect
      .poll(() => page.clock.runFor(1000).then(() => asked().filter(isAhead).length))
      .toBeGreaterThan(3);
    const rest = asked()
      .slice(asked().findIndex(isAhead))
      .filter((path) => /\/parts\//.test(path));
    expect(rest.filter((path) => !/\/(picture|door|shop)-/.test(path))).toEqual([]);
  });

  test("are left where the phone says that data is to be saved", async ({ panel, page }) => {
    await page.addInitScript(() =>
      Object.defineProperty(navigator, "connection", { value: { saveData: true }, configurable: true }),
    );
    const came = watchDrawings(page);
    await panel.openWhere("power.light", { "opening.symptom": "no-ice" });
    await panel.hasEverything();
    await page.clock.runFor(5000);
    expect([...came]).toEqual([panel.turn.picture]);
  });
});

test.describe("a drawing that is missing", () => {
  test.use({ expectedFaults: /ERR_FAILED/ });

  test("leaves no hole", async ({ panel, page }) => {
    await page.route(/\/picture-/, (route) => route.abort());
    await panel.openWhere("power.light", { "opening.symptom": "no-ice" });
    expect(panel.turn.picture).not.toBeNull();
    await expect(panel.host.locator(".turn figure")).toHaveCount(0);
    await expect(panel.host.locator(".turn .tile")).toBeHidden();
    await panel.seesTurn();
  });
});

test("names below a drawing have the numbers that stand in it", async ({ panel }) => {
  await panel.openWhere("fresh-ice.look", { "opening.symptom": "odd-ice" });
  const names = panel.host.locator(".turn figure li");
  const inDrawing = drawing(panel).locator("text");
  await expect(inDrawing).toHaveText(["1", "2", "3", "4"]);
  await expect(names).toHaveCount(4);
  for (const name of await names.all()) {
    await expect(name).toHaveCSS("display", "list-item");
    await expect(name).toHaveCSS("list-style-type", "decimal");
  }
});
