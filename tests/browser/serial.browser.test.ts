import { atModelOfBin } from "./expected.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";

const code = "TBY-744-K4.W";
const bin = {
  kind: "ice-bin",
  price: { minor: 2450, currency: "GBP" },
  stock: "in-stock",
} as const;

type Fit = string | { code: string; variant?: string; serialFrom?: string; serialTo?: string };

/** Comes to the part card with a shop that has these bins for the code, by their numbers. */
async function seesCard(panel: PanelPage, fits: Record<string, Fit[]>, more: object = {}): Promise<void> {
  const body = JSON.stringify({
    models: [{ code, brand: "Tarnhoxby", machine: "side-by-side" }],
    parts: Object.entries(fits).map(([number, each]) => ({
      ...{ ...bin, ...more, number, name: `Bin ${number}`, fits: each },
    })),
  });
  await panel.page.route("**/catalogue.json", (route) =>
    route.fulfill({ body, contentType: "application/json" }),
  );
  await panel.openAt(atModelOfBin());
  await panel.giveModel(code);
}

const bySerial: Record<string, Fit[]> = {
  "B-OLD": [{ code, serialTo: "40129999" }],
  "B-NEW": [{ code, serialFrom: "40130000" }],
};

const offered = (panel: PanelPage) => panel.host.getByRole("heading", { level: 4 });
const add = (panel: PanelPage) => panel.button(panel.text("part.add"));
const field = (panel: PanelPage) => panel.host.getByRole("textbox", { name: panel.text("part.serial") });
const lost = (panel: PanelPage) => panel.button(panel.text("measure.plate-lost"));
const help = (panel: PanelPage) => panel.host.getByRole("link", { name: /Larder Lane Spares/ });

async function read(panel: PanelPage, serial: string): Promise<void> {
  await field(panel).fill(serial);
  await panel.button(panel.text("part.show")).tap();
}

test.describe("a bin that was changed in the middle of a model's life", () => {
  test("is offered for the number on the plate, both ends of a range included", async ({ panel }) => {
    await seesCard(panel, bySerial);
    await expect(field(panel)).toBeVisible();
    await expect(offered(panel)).toHaveCount(0);
    await panel.seesTurn();
    for (const [serial, name] of [
      ["40129999", "Bin B-OLD"],
      ["40130000", "Bin B-NEW"],
      ["4013 0000", "Bin B-NEW"],
      ["1", "Bin B-OLD"],
    ] as const) {
      await read(panel, serial);
      await expect(panel.host.getByText(panel.text("part.serial-fits", { serial }))).toBeVisible();
      await expect(offered(panel)).toHaveText(name);
      await panel.seesTurn();
    }
  });

  test("is taken away while the number is being changed", async ({ panel }) => {
    await seesCard(panel, bySerial);
    await read(panel, "40130000");
    await expect(add(panel)).toBeVisible();
    await field(panel).press("End");
    await field(panel).press("Backspace");
    await expect(field(panel)).toHaveValue("4013000");
    await expect(add(panel)).toHaveCount(0);
  });

  test("is told to the page's basket with the number", async ({ panel, page }) => {
    await seesCard(panel, bySerial);
    await page.evaluate(() => {
      document.addEventListener("fridgeside-basket", (event) => {
        const { added: _, failed: __, ...part } = (event as CustomEvent).detail;
        Object.assign(window, { part });
      });
    });
    await read(panel, "40130000");
    await add(panel).tap();
    expect(await page.evaluate(() => (window as never as { part: object }).part)).toEqual({
      ...{ number: "B-NEW", name: "Bin B-NEW", model: code, serial: "40130000" },
    });
  });

  test("a number of another make is not guessed at; it stays typed and has the focus", async ({ panel }) => {
    await seesCard(panel, bySerial);
    await read(panel, "K12-77");
    await expect(field(panel)).toHaveAccessibleDescription(panel.text("part.serial-unlike"));
    await expect(field(panel)).toHaveValue("K12-77");
    await expect(field(panel)).toBeFocused();
    await expect(offered(panel)).toHaveCount(0);
    await panel.seesTurn();
  });

  test("a number that nobody can read leads to the shop's people, never to a product", async ({ panel }) => {
    await seesCard(panel, bySerial);
    await lost(panel).tap();
    await expect(
      panel.host.getByText(panel.text("part.unread-serial", { part: panel.text("parts.ice-bin.name") })),
    ).toBeVisible();
    await expect(help(panel)).toBeVisible();
    await expect(offered(panel)).toHaveCount(0);
    await panel.seesTurn();
  });

  test("a number that is not needed is not missed", async ({ panel }) => {
    await seesCard(panel, { ...bySerial, "B-ALL": [code] });
    await lost(panel).tap();
    await expect(offered(panel)).toHaveText("Bin B-ALL");
    await expect(panel.host.getByText(panel.text("part.serial-any"))).toBeVisible();
  });
});

test.describe("a bin that depends on the variant beside the code", () => {
  const byVariant: Record<string, Fit[]> = {
    "B-1": [{ code, variant: "01" }],
    "B-2": [{ code, variant: "02", serialFrom: "A100", serialTo: "A499" }],
  };
  const pick = (panel: PanelPage, label: string) => panel.host.getByText(label, { exact: true }).tap();

  test("is offered for the one that is chosen, by keyboard too", async ({ panel, page }) => {
    await seesCard(panel, byVariant);
    await expect(panel.host.getByRole("radio")).toHaveCount(4);
    await panel.seesTurn();
    await panel.host.getByRole("radio", { name: "01" }).focus();
    await page.keyboard.press("Space");
    await expect(offered(panel)).toHaveText("Bin B-1");
    // Whoever goes through the group by its arrows keeps the focus in it.
    await page.keyboard.press("ArrowDown");
    await expect(panel.host.getByRole("radio", { name: "02" })).toBeFocused();
    await expect(offered(panel)).toHaveCount(0);
    await read(panel, "a 250");
    await expect(offered(panel)).toHaveText("Bin B-2");
    await panel.seesTurn();
  });

  test("is none for another one, and that is said", async ({ panel }) => {
    await seesCard(panel, byVariant);
    await pick(panel, panel.text("part.other-variant"));
    const part = panel.text("parts.ice-bin.name");
    await expect(panel.host.getByText(panel.text("part.no-part-read", { part, model: code }))).toBeVisible();
    await expect(help(panel)).toBeVisible();
    await panel.seesTurn();
    await pick(panel, panel.text("measure.plate-lost"));
    await expect(panel.host.getByText(panel.text("part.unread-variant", { part }))).toBeVisible();
    await panel.seesTurn();
  });
});

test.describe("a picture of a part", () => {
  const picture = "/bin.svg";

  test("is shown beside its name, and the page is not told to the host", async ({ panel, page, baseURL }) => {
    const asked: (string | undefined)[] = [];
    await page.route(`**${picture}`, async (route) => {
      asked.push((await route.request().allHeaders())["referer"]);
      await route.fulfill({
        contentType: "image/svg+xml",
        body: '<svg xmlns="http://www.w3.org/2000/svg" width="80" height="80"/>',
      });
    });
    await seesCard(panel, { "B-1": [code] }, { picture: new URL(picture, baseURL).href });
    await expect(panel.host.locator(".offer img")).toBeVisible();
    await expect.poll(() => asked).toEqual([undefined]);
    await panel.seesTurn();
  });

  test.describe("that does not come", () => {
    test.use({ expectedFaults: /ERR_FAILED/ });
    test("is not there, and all else is", async ({ panel, page, baseURL }) => {
      await page.route(`**${picture}`, (route) => route.abort());
      await seesCard(panel, { "B-1": [code] }, { picture: new URL(picture, baseURL).href });
      await expect(offered(panel)).toHaveText("Bin B-1");
      await expect(panel.host.locator(".offer img")).toBeHidden();
      await panel.seesTurn();
    });
  });
});
