import type { Page } from "@playwright/test";
import { journalIn } from "../../src/cobrowse/client/index.ts";
import { type Journal, parseJournal, standingOf } from "../../src/session/index.ts";
import { type Inside, joinRoom, type Running, records, startRelay } from "../cobrowse/relay/sockets.ts";
import { violationsOn } from "./axe.ts";
import type { PanelPage } from "./panel-page.ts";
import { test as base, expect } from "./panel-test.ts";

/** A shop whose people can join, by a relay on this machine. */
const test = base.extend<{ relay: Running }>({
  relay: async ({ site, page }, use) => {
    const relay = await startRelay({ origins: [new URL(site).origin, "https://shop.example"], proxies: 0 });
    const own = {
      relay: `ws://127.0.0.1:${relay.port}`,
      "shop-name": "Larder Lane Spares",
      "help-link": "tel:+441632960000",
    };
    // Before the script runs, which waits for the page to be read.
    await page.addInitScript((attributes) => {
      document.addEventListener("readystatechange", () => {
        const [tag] = document.getElementsByTagName("fridgeside-panel");
        for (const [name, value] of Object.entries(attributes)) tag?.setAttribute(name, value);
      });
    }, own);
    await use(relay);
    await relay.relay.close();
  },
});

// The demo shop's page allows connections to itself alone.
test.use({ bypassCSP: true });

const bar = (panel: PanelPage) => panel.host.getByRole("region", { name: panel.text("live.title") });
const tapIn = (panel: PanelPage, key: string, values = {}) =>
  bar(panel)
    .getByRole("button", { name: panel.text(`live.${key}`, values), exact: true })
    .tap();

/** Asks for a person from the menu, and reads the code off the screen. */
async function asks(panel: PanelPage): Promise<string> {
  await panel.hasEverything();
  await panel.button(panel.text("ui.menu")).tap();
  await panel.button(panel.text("live.get")).tap();
  const groups = bar(panel).locator(".live-code b");
  await expect(groups).toHaveText([/^\w{4}$/, /^\w{4}$/]);
  return (await groups.allTextContents()).join(" ");
}

/** An agent joins by the code that was read out, and is let in. */
async function letsIn(panel: PanelPage, relay: Running, code: string): Promise<Inside> {
  const desk = await joinRoom(relay, code);
  await expect(bar(panel).getByText(panel.text("live.asks", { name: "Ash" }))).toBeVisible();
  await tapIn(panel, "let-in", { name: "Ash" });
  await expect(bar(panel).getByText(panel.text("live.sees", { names: "Ash" }))).toBeVisible();
  return desk;
}

/** The journal that an agent has once so many entries of it have come. */
async function seesJournal(desk: Inside, turn: string) {
  const bodies: string[] = [];
  for (;;) {
    const [record] = await records(desk, 1);
    if (record?.kind !== "entry") continue;
    bodies.push(record.body);
    const journal = parseJournal(journalIn(bodies));
    expect(journal, record.body).not.toBeNull();
    const { events } = standingOf(journal as Journal).log;
    if (events.some((event) => "turn" in event && event.turn === turn)) return events;
  }
}

const eventNames = ["asked", "joined", "left"].map((name) => `fridgeside-help-${name}`);
const notesEvents = (page: Page) =>
  page.addInitScript((names) => {
    const noted: unknown[] = [];
    Object.assign(window, { noted });
    for (const name of names)
      addEventListener(name, (event) => noted.push([name.slice(16), (event as CustomEvent).detail]));
  }, eventNames);
const noted = (page: Page) => page.evaluate(() => (window as never as { noted: unknown[] }).noted);

test.describe("one of the shop's people", () => {
  test("joins by a code, sees nothing before they are let in, and the journal after", async ({
    panel,
    page,
    relay,
  }) => {
    await notesEvents(page);
    await panel.openWhere("ice-bin.look", { "opening.symptom": "no-ice" }, "plain.html");
    const code = await asks(panel);
    expect(await violationsOn(page), "with a code").toEqual([]);
    const desk = await joinRoom(relay, code);
    await expect(bar(panel).getByText(panel.text("live.will-see"))).toBeVisible();
    expect(await violationsOn(page), "with somebody at the door").toEqual([]);
    expect(desk.heard.join("")).not.toContain("ice-bin");
    await tapIn(panel, "let-in", { name: "Ash" });
    await expect(bar(panel).getByText(panel.text("live.sees", { names: "Ash" }))).toBeVisible();
    await panel.answer("fine");
    const events = await seesJournal(desk, "ice-bin.look");
    expect(events.map(({ type }) => type)).toContain("answered");
    expect(desk.heard.join("")).not.toMatch(/Larder|plain\.html|A plain page/);
    await tapIn(panel, "end");
    await expect(bar(panel)).toHaveCount(0);
    expect(await desk.closed).toBe(4000);
    expect(await noted(page)).toEqual([
      ["asked", { by: "householder", why: "menu" }],
      ["joined", { by: "agent", why: "let-in" }],
      ["left", { by: "householder", why: "ended" }],
    ]);
  });

  test("suggests an answer, which one tap takes; what is typed to them arrives", async ({
    panel,
    page,
    relay,
  }) => {
    await panel.openWhere("ice-bin.look", { "opening.symptom": "no-ice" }, "plain.html");
    const desk = await letsIn(panel, relay, await asks(panel));
    desk.put("line", "Hello, I'm Ash.");
    await expect(bar(panel).getByText("Hello, I'm Ash.")).toBeVisible();
    desk.put("point", JSON.stringify({ turn: "ice-bin.look", answer: "fine" }));
    const answer = panel.turn.answers.find(({ id }) => id === "fine")?.text ?? "";
    await expect(panel.host.locator("[data-pointed]")).toHaveText(answer);
    desk.put(
      "propose",
      JSON.stringify({ turn: "ice-bin.look", answer: "fine", why: "You said they're loose." }),
    );
    await expect(panel.host.getByText("You said they're loose.")).toBeVisible();
    expect(await violationsOn(page), "with a suggestion").toEqual([]);
    const before = await panel.storedText();
    await tapIn(panel, "write", { names: "Ash" });
    await bar(panel).getByRole("textbox").fill("They are loose, yes");
    await bar(panel)
      .getByRole("button", { name: panel.text("live.send") })
      .tap();
    await expect(bar(panel).getByText("They are loose, yes")).toBeVisible();
    await expect.poll(() => desk.heard.join("")).toContain("They are loose, yes");
    expect(await panel.storedText()).toBe(before);
    await panel.host.locator(".suggested").getByRole("button", { name: answer }).tap();
    await panel.took({ type: "answered", turn: "ice-bin.look", answer: "fine", at: await panel.now() });
    await expect.poll(() => desk.heard.join("")).toContain('\\"is\\":\\"taken\\"');
  });

  test("is still there after a reload, and sees nothing while the search is paused", async ({
    panel,
    page,
    relay,
  }) => {
    await panel.openWhere("ice-bin.look", { "opening.symptom": "no-ice" }, "plain.html");
    const desk = await letsIn(panel, relay, await asks(panel));
    await tapIn(panel, "pause");
    await expect(bar(panel).getByText(panel.text("live.paused", { names: "Ash" }))).toBeVisible();
    await expect.poll(() => desk.heard.join("")).toContain('"pause"');
    const heard = desk.heard.length;
    await panel.answer("fine");
    await panel.reload();
    await expect(bar(panel).getByText(panel.text("live.paused", { names: "Ash" }))).toBeVisible();
    expect(desk.heard.slice(heard).filter((text) => text.includes('"entry"'))).toEqual([]);
    await tapIn(panel, "go-on");
    await seesJournal(desk, "ice-bin.look");
    await expect(page).toHaveURL(/plain\.html$/);
  });

  test("sees at once that somebody has reported a danger", async ({ panel, relay }) => {
    await panel.openWhere("ice-bin.look", { "opening.symptom": "no-ice" }, "plain.html");
    const desk = await letsIn(panel, relay, await asks(panel));
    desk.put("propose", JSON.stringify({ ending: "professional", why: "" }));
    await expect(panel.host.locator(".suggested").getByRole("button").first()).toBeVisible();
    await panel.reportDanger("gas");
    await expect.poll(() => desk.heard.join("")).toContain("danger-reported");
    await expect(panel.host.locator(".suggested")).toHaveCount(0);
    await expect(bar(panel).getByText(panel.text("live.sees", { names: "Ash" }))).toBeVisible();
  });
});
