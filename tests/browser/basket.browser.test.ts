import { atModelOfBin } from "./expected.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const code = "TBY-744-K4.W";
const body = JSON.stringify({
  models: [{ code, brand: "Tarnhoxby", machine: "side-by-side" }],
  parts: [
    {
      number: "B-1",
      kind: "ice-bin",
      name: "Ice bin",
      price: { minor: 100, currency: "GBP" },
      stock: "in-stock",
      fits: [code],
    },
  ],
});

/** Comes to the part, on a page that answers a basket event as `answer` says. */
async function seesPart(
  panel: PanelPage,
  path: string,
  answer: "added" | "failed" | "both" | "nothing",
): Promise<void> {
  const { page } = panel;
  await page.route("**/catalogue.json", (route) => route.fulfill({ body, contentType: "application/json" }));
  await panel.openAt(atModelOfBin(), path);
  await page.evaluate((how) => {
    const asked: object[] = [];
    Object.assign(window, { asked, how });
    document.addEventListener("fridgeside-basket", (event) => {
      const { added, failed, ...part } = (event as CustomEvent).detail;
      asked.push({ ...part, bubbled: event.target === document.querySelector("fridgeside-panel") });
      const { how: now } = window as never as { how: string };
      Object.assign(window, { late: added });
      if (now === "added") added();
      if (now === "failed" || now === "both") failed();
      if (now === "both") added();
    });
  }, answer);
  await panel.giveModel(code);
}

const asked = (panel: PanelPage) => panel.page.evaluate(() => (window as never as { asked: object[] }).asked);
const add = (panel: PanelPage) => panel.button(panel.text("part.add")).tap();

test.describe("the basket of the page", () => {
  test("of the demo shop counts the part", async ({ panel, page }) => {
    await page.route("**/catalogue.json", (route) =>
      route.fulfill({ body, contentType: "application/json" }),
    );
    await panel.openAt(atModelOfBin());
    await panel.giveModel(code);
    await add(panel);
    await expect(panel.host.getByText(panel.text("part.added-said"))).toBeVisible();
    await expect(page.locator("#basket")).toHaveText("1");
  });

  test("is asked once with the part, and what it did is said", async ({ panel }) => {
    await seesPart(panel, "with-catalogue.html", "added");
    await panel.button(panel.text("part.add")).evaluate((button) => {
      (button as HTMLElement).click();
      (button as HTMLElement).click();
    });
    const added = panel.button(panel.text("part.added"));
    await expect(added).toBeVisible();
    await added.tap({ force: true });
    expect(await asked(panel)).toEqual([{ number: "B-1", name: "Ice bin", model: code, bubbled: true }]);
    await panel.seesTurn();
  });

  test("that fails is said, and can be tried again", async ({ panel, page }) => {
    await seesPart(panel, "with-catalogue.html", "failed");
    await add(panel);
    await expect(panel.host.getByText(panel.text("part.failed"))).toBeVisible();
    await panel.seesTurn();
    await page.evaluate(() => Object.assign(window, { how: "added" }));
    await panel.button(panel.text("part.add-again")).tap();
    await expect(panel.host.getByText(panel.text("part.added-said"))).toBeVisible();
    expect(await asked(panel)).toHaveLength(2);
  });

  test("that answers twice is taken at its first word", async ({ panel }) => {
    await seesPart(panel, "with-catalogue.html", "both");
    await add(panel);
    await expect(panel.host.getByText(panel.text("part.failed"))).toBeVisible();
  });

  test("that says nothing for ten seconds is said to be silent, and is asked again by an own choice only", async ({
    panel,
    page,
  }) => {
    await seesPart(panel, "with-catalogue.html", "nothing");
    await add(panel);
    await expect(panel.button(panel.text("part.adding"))).toBeVisible();
    await page.clock.runFor(11_000);
    await expect(panel.host.getByText(panel.text("part.silent"))).toBeVisible();
    await expect(panel.button(panel.text("part.add"))).toHaveCount(0);
    await panel.seesTurn();
    expect(await asked(panel)).toHaveLength(1);
    await panel.button(panel.text("part.add-anyway")).tap();
    expect(await asked(panel)).toHaveLength(2);
  });

  test("that answers a minute late is believed", async ({ panel, page }) => {
    await seesPart(panel, "with-catalogue.html", "nothing");
    await add(panel);
    await page.clock.runFor(60_000);
    await page.evaluate(() => (window as never as { late: () => void }).late());
    await expect(panel.host.getByText(panel.text("part.added-said"))).toBeVisible();
  });

  test("that has the part already is not asked for it after a reload, nor in another tab", async ({
    panel,
    page,
    context,
  }) => {
    await seesPart(panel, "with-catalogue.html", "added");
    await add(panel);
    await expect(panel.button(panel.text("part.added"))).toBeVisible();
    await panel.reload();
    await expect(panel.button(panel.text("part.added"))).toBeVisible();
    const other = await context.newPage();
    await other.clock.install({ time: await panel.now() });
    await other.route("**/catalogue.json", (route) =>
      route.fulfill({ body, contentType: "application/json" }),
    );
    await other.goto("with-catalogue.html");
    await expect(other.getByRole("button", { name: panel.text("part.added"), exact: true })).toBeVisible();
    await panel.restart();
    expect(await page.evaluate(() => localStorage.getItem("fridgeside:panel:basket"))).toBeNull();
  });
});

test.describe("what the page is told of an ending", () => {
  test("its outcome, cause, part and model, once and not again after a reload", async ({ panel, page }) => {
    await page.addInitScript(() => {
      const told: object[] = [];
      Object.assign(window, { told });
      document.addEventListener("fridgeside-ended", (event) => told.push((event as CustomEvent).detail));
    });
    const told = () => page.evaluate(() => (window as never as { told: object[] }).told);
    await seesPart(panel, "with-catalogue.html", "added");
    expect(await told()).toEqual([{ outcome: "part", cause: "bin-cracked", part: "ice-bin", model: code }]);
    await panel.reload();
    expect(await told()).toEqual([]);
    await panel.reportDanger("gas");
    expect(await told()).toHaveLength(0);
  });
});
