import type { Page } from "@playwright/test";
import type { PanelPage } from "../panel-page.ts";
import { expect, test } from "../panel-test.ts";
import { holdParts } from "./held-back.ts";

/** Takes the tag out and puts it in again so many times, each in a task of its own. */
const moveAbout = (panel: PanelPage, times: number) =>
  panel.host.evaluate(async (host, count) => {
    const place = host.parentElement;
    for (let moved = 0; moved < count; moved++) {
      host.remove();
      await new Promise((next) => setTimeout(next));
      place?.append(host);
      await new Promise((next) => setTimeout(next));
    }
  }, times);

/** Counts what is fetched later and how often a session is kept: each start that comes to its end does it once. */
async function count(page: Page) {
  const fetched: string[] = [];
  page.on("request", (request) => {
    const { pathname } = new URL(request.url());
    if (pathname.startsWith("/parts/") || pathname.endsWith(".json")) fetched.push(pathname);
  });
  await page.addInitScript(() => {
    const { setItem } = Storage.prototype;
    Object.assign(window, { kept: 0 });
    Storage.prototype.setItem = function (key, value) {
      if (key === "fridgeside:panel") (window as never as { kept: number }).kept++;
      setItem.call(this, key, value);
    };
  });
  return { fetched, kept: () => page.evaluate(() => (window as never as { kept: number }).kept) };
}

test.describe("a tag that a page moves about", () => {
  test("a hundred times before the rest has come: one start comes to its end, and each file is fetched once", async ({
    panel,
    page,
  }) => {
    await panel.openWhere("opening.supply", {}, "with-catalogue.html");
    await panel.hasEverything();
    const { fetched, kept } = await count(page);
    const { release } = await holdParts(page);
    await page.goto("with-catalogue.html");
    await moveAbout(panel, 100);
    expect(await kept()).toBe(0);
    release();
    await panel.seesTurn();
    expect(await kept()).toBe(1);
    expect(fetched.sort()).toEqual([...new Set(fetched)]);
    await panel.answer("plumbed");
  });

  test("a hundred times while it is in use: nothing is fetched or made again, and one session runs", async ({
    panel,
    page,
  }) => {
    const { fetched } = await count(page);
    await panel.openWhere("opening.supply", {}, "with-catalogue.html");
    await panel.hasEverything();
    const before = fetched.length;
    await moveAbout(panel, 100);
    await panel.seesTurn();
    expect(fetched).toHaveLength(before);
    // Each session that still ran would show itself at a change of the connection.
    await page.context().setOffline(true);
    await panel.seesNotice("offline");
    await page.context().setOffline(false);
    await panel.answer("plumbed");
  });
});
