import type { Page } from "@playwright/test";
import { readLine } from "../../src/insight/index.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";
import { fieldOf } from "./talk.ts";

const canary = "canarywords";

/** Everything that leaves the page from now on, and what of it goes to the shop's own address for outcomes. */
async function watchNetwork(page: Page) {
  const all: string[] = [];
  const batches: string[][] = [];
  page.on("request", (request) => all.push(`${request.url()} ${request.postData() ?? ""}`));
  await page.route("**/collect", async (route) => {
    batches.push((route.request().postData() ?? "").trimEnd().split("\n"));
    await route.fulfill({ status: 204 });
  });
  return { all, batches };
}

/** Opens a page whose panel has these attributes, and answers the first questions. */
async function begin(panel: PanelPage, attributes: Record<string, string>): Promise<void> {
  await panel.page.goto("no-panel.html");
  await panel.page.evaluate((given) => {
    const host = document.createElement("fridgeside-panel");
    for (const [name, value] of Object.entries(given)) host.setAttribute(name, value);
    document.querySelector("#place")?.append(host);
  }, attributes);
  await panel.seesTurn();
  await panel.says();
  await panel.answer("none");
}

/** Types a sentence that nobody understands. */
async function types(panel: PanelPage): Promise<void> {
  await fieldOf(panel).fill(`${canary} blorp zzyzx`);
  await fieldOf(panel).press("Enter");
  await expect(panel.host.getByText(panel.text("composer.none")).first()).toBeVisible();
}

const setConsent = (page: Page, given: unknown) =>
  page.evaluate((is) => {
    Object.assign(document.querySelector("fridgeside-panel") as object, { consent: is });
  }, given);

/** The page is hidden, as if another tab were looked at, and shown again. */
const turnAway = (page: Page) =>
  page.evaluate(() => {
    for (const state of ["hidden", "visible"]) {
      Object.defineProperty(document, "visibilityState", { configurable: true, value: state });
      document.dispatchEvent(new Event("visibilitychange"));
    }
  });

const keysOf = (page: Page) =>
  page.evaluate(() => [...Object.keys(localStorage), ...Object.keys(sessionStorage), document.cookie].sort());

async function stops(panel: PanelPage): Promise<void> {
  await panel.reportDanger("gas");
  await panel.seesEnding("stopped");
}

test.describe("outcomes", () => {
  test("without the person's yes: nothing is sent, fetched or stored for it", async ({ panel, page }) => {
    const { all, batches } = await watchNetwork(page);
    await begin(panel, { insight: "/collect" });
    await types(panel);
    const kept = await keysOf(page);
    await turnAway(page);
    await stops(panel);
    expect(batches).toEqual([]);
    expect(all.filter((request) => /insight|collect/.test(request))).toEqual([]);
    expect(all.filter((request) => request.includes(canary))).toEqual([]);
    expect(kept.filter((key) => !/^(|fridgeside:panel(:[a-z]+)?)$/.test(key))).toEqual([]);
  });

  test("with it: one batch at the end, each line by the schema, and nothing that was typed", async ({
    panel,
    page,
  }) => {
    const { all, batches } = await watchNetwork(page);
    await begin(panel, { insight: "/collect", consent: "yes" });
    await types(panel);
    const before = await keysOf(page);
    await stops(panel);
    await expect.poll(() => batches.length).toBe(1);
    expect(batches[0]?.map(readLine)).toMatchObject([
      { what: "started" },
      { what: "not-understood" },
      { what: "ended", outcome: "stopped" },
    ]);
    expect(all.filter((request) => request.includes(canary))).toEqual([]);
    expect(before.filter((key) => !/^(|fridgeside:panel(:[a-z]+)?)$/.test(key))).toEqual([]);
  });

  test("given on the way as a property: only what happens from then on is sent, when the page is hidden", async ({
    panel,
    page,
  }) => {
    const { batches } = await watchNetwork(page);
    await begin(panel, { insight: "/collect" });
    await types(panel);
    const came = page.waitForResponse(/parts\/insight-/);
    await setConsent(page, true);
    await came;
    await expect
      .poll(async () => {
        await turnAway(page);
        return batches.length;
      })
      .toBeGreaterThan(0);
    const lines = batches.flat().map(readLine);
    expect(lines.map((line) => line?.what)).not.toContain("started");
    expect(lines).toContainEqual(expect.objectContaining({ what: "left", turn: panel.turn.turn }));
  });

  test("withdrawn: what waits is dropped, and nothing is sent any more", async ({ panel, page }) => {
    const { batches } = await watchNetwork(page);
    const came = page.waitForResponse(/parts\/insight-/);
    await begin(panel, { insight: "/collect", consent: "" });
    await came;
    await types(panel);
    await setConsent(page, false);
    await expect(panel.host).not.toHaveAttribute("consent");
    await turnAway(page);
    await stops(panel);
    await setConsent(page, true);
    await turnAway(page);
    expect(batches).toEqual([]);
  });

  for (const consent of ["no", "false", "maybe"])
    test(`consent="${consent}" is no yes`, async ({ panel, page }) => {
      const { all } = await watchNetwork(page);
      await begin(panel, { insight: "/collect", consent });
      await stops(panel);
      expect(all.filter((request) => /insight|collect/.test(request))).toEqual([]);
    });
});

test.describe("events of the page", () => {
  test("tell a search once, over a reload too, and never what was typed", async ({ panel, page }) => {
    const names = ["started", "turn-shown", "answered", "returned", "left", "not-found", "danger", "ended"];
    // A page that goes can still write: what it tells last is looked at on the next one.
    await page.addInitScript((all) => {
      for (const name of all)
        addEventListener(`fridgeside-${name}`, (event) => {
          const told = JSON.parse(sessionStorage.getItem("told") ?? "[]");
          sessionStorage.setItem("told", JSON.stringify([...told, [name, (event as CustomEvent).detail]]));
        });
    }, names);
    const told = () =>
      page.evaluate((): [string, Record<string, unknown>][] =>
        JSON.parse(sessionStorage.getItem("told") ?? "[]"),
      );
    const named = async (name: string) =>
      (await told()).filter(([each]) => each === name).map(([, detail]) => detail);
    await begin(panel, {});
    await types(panel);
    await expect.poll(() => named("answered")).toMatchObject([{ answer: "no-ice" }, { answer: "none" }]);
    await panel.page.reload();
    await page.evaluate(() => {
      document.querySelector("#place")?.append(document.createElement("fridgeside-panel"));
    });
    await panel.seesTurn();
    await expect.poll(() => named("returned")).toEqual([{ turn: panel.turn.turn }]);
    expect(await named("left")).toEqual([expect.objectContaining({ turn: panel.turn.turn })]);
    expect(await named("answered")).toHaveLength(2);
    await stops(panel);
    await expect.poll(() => named("ended")).toMatchObject([{ outcome: "stopped", cause: null }]);
    expect(await named("started")).toEqual([{ again: false }]);
    expect(await named("danger")).toEqual([{ danger: "gas" }]);
    expect(await named("not-found")).toMatchObject([{ what: "sentence" }]);
    const turns = (await named("turn-shown")).map(({ turn }) => turn);
    expect(new Set(turns).size).toBe(turns.length);
    expect(JSON.stringify(await told())).not.toContain(canary);
  });
});
