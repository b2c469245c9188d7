import { readFileSync } from "node:fs";
import { codeWith } from "./expected.ts";
import { PanelPage } from "./panel-page.ts";
import { expect, test } from "./panel-test.ts";
import { demoFolder } from "./site.ts";

/** Where the page about privacy says that something is kept: the storage and the key. */
const told = [
  ...readFileSync(`${demoFolder}/docs/privacy.md`, "utf8").matchAll(/^\| `([^`]+)` +\| `(\w+)`/gm),
].map(([, key = "", where]) => `${where} ${key.replace("<name>", "panel")}`);

test("a whole search keeps what the page about privacy says, sets no cookie, and asks no other server", async ({
  page,
  site,
}) => {
  const asked: string[] = [];
  page.on("request", (request) => asked.push(new URL(request.url()).origin));
  await page.addInitScript(() => {
    const kept: string[] = [];
    Object.assign(window, { kept });
    const { setItem } = Storage.prototype;
    Storage.prototype.setItem = function (key, value) {
      kept.push(`${this === localStorage ? "localStorage" : "sessionStorage"} ${key}`);
      setItem.call(this, key, value);
    };
    const note = (what: object, name: string) => {
      const own = Reflect.get(what, name);
      Reflect.set(what, name, (...given: unknown[]) => {
        kept.push(`${name} ${given[0]}`);
        return own.apply(what, given);
      });
    };
    note(indexedDB, "open");
    if ("caches" in window) note(caches, "open");
  });
  const panel = new PanelPage(page, { axe: false });
  await panel.openWhere("part.model", { "opening.symptom": "no-ice" }, "index.html", "bin-cracked");
  // Half done, then done.
  await panel.host.locator(".turn").getByRole("textbox").fill("WXC 3");
  await panel.giveModel(codeWith("ice-bin"));
  await panel.button(panel.text("part.add")).first().tap();
  await expect(page.locator("#basket")).toHaveText("1");
  await panel.reportDanger("gas");
  await panel.seesEnding("stopped");
  const kept = await page.evaluate(() => [...new Set((window as never as { kept: string[] }).kept)]);
  // The last is the demo shop's own.
  expect(kept.filter((key) => !told.includes(key))).toEqual(["sessionStorage larder-lane-basket"]);
  for (const beside of ["", ":basket", ":stop"])
    expect(kept).toContain(`localStorage fridgeside:panel${beside}`);
  expect(kept).toContain("sessionStorage fridgeside:panel:draft");
  expect(await page.context().cookies()).toEqual([]);
  expect([...new Set(asked)]).toEqual([new URL(site).origin]);
});
