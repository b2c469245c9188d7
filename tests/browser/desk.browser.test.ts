import { stopBy } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { violationsOn } from "./axe.ts";
import { DeskPage, walkTo } from "./desk-page.ts";
import { test as base, expect } from "./panel-test.ts";

const test = base.extend<{ desk: DeskPage }>({
  desk: async ({ page, site }, use) => {
    const desk = new DeskPage(page, site);
    await desk.open();
    await use(desk);
    await desk.close();
  },
});

// An agent sits at a screen with a mouse and keys; the clock is that of the relay beside it.
test.use({ hand: "fast", clock: "real", isMobile: false, hasTouch: false, deviceScaleFactor: 1 });
// After a reload the page's own markup still names the demo's relay, which nobody has started here.
test.use({ expectedFaults: /ws:\/\/127\.0\.0\.1:8787/ });

const asked = walkTo("ice-bin.look", {}, "WXM 431AB8/1");
const measuring = walkTo("flow-test.run", {}, "WXM 431AB8/1");

for (const [width, height] of [
  [1280, 900],
  [360, 740],
] as const)
  for (const colorScheme of ["light", "dark"] as const)
    test.describe(`the desk at ${width} px, ${colorScheme}`, () => {
      test.use({ viewport: { width, height }, colorScheme });
      const isNarrow = width < 1080;
      const look = `${width} ${colorScheme}`;

      test("axe finds no fault with it, whatever it shows", async ({ page, desk }) => {
        const faultsOf = async (what: string) =>
          (await violationsOn(page, look)).map((one) => `${what}: ${one}`);
        const faults = await faultsOf("nobody yet");
        const phone = await desk.meet(asked);
        if (isNarrow) faults.push(...(await faultsOf("their phone")));
        if (isNarrow) await page.getByRole("button", { name: "What we know" }).click();
        await page.getByRole("button", { name: "Propose: It sits right and has room" }).click();
        faults.push(...(await faultsOf("a proposal")));
        for (const summary of await page.locator(".suggest summary").all()) await summary.click();
        phone.write("Are you there?");
        await expect(page.getByText("Are you there?").last()).toBeVisible();
        faults.push(...(await faultsOf("all that can be suggested")));
        phone.share(measuring);
        await expect(desk.asked).toHaveText("How much water comes out of the dispenser?");
        for (const tab of ["Chart", "Journal", "Parts"]) {
          await page.getByRole("tab", { name: tab }).click();
          faults.push(...(await faultsOf(tab)));
        }
        await expect(page.locator(".parts li").first()).toBeVisible();
        faults.push(...(await faultsOf("parts")));
        phone.share(stopBy(measuring, "burning", at(90)));
        await expect(page.locator(".list .danger")).toBeAttached();
        if (isNarrow) await page.getByRole("button", { name: "Back", exact: true }).click();
        faults.push(...(await faultsOf("a danger")));
        expect(faults).toEqual([]);
      });

      test("nothing is cut off at its sides", async ({ page, desk }) => {
        await desk.meet(asked);
        const wide = () =>
          page.locator("fridgeside-desk").evaluate((one) => {
            const parts = one.shadowRoot?.querySelectorAll<HTMLElement>(".scroll, .bar, .way-back") ?? [];
            return [...parts]
              .filter((part) => part.scrollWidth > part.clientWidth + 1)
              .map((part) => part.className);
          });
        expect(await wide()).toEqual([]);
        if (isNarrow)
          for (const to of ["What we know", "Back"]) {
            await page.getByRole("button", { name: to, exact: true }).click();
            expect(await wide()).toEqual([]);
          }
      });
    });

test.describe("an agent", () => {
  test.use({ viewport: { width: 1280, height: 900 } });

  test("does all of it by keys: joins, looks through what is known, points, proposes and writes", async ({
    page,
    desk,
  }) => {
    const phone = await desk.call();
    const tabTo = async (name: RegExp) => {
      for (let step = 0; step < 60; step++) {
        await page.keyboard.press("Tab");
        const focused = await page.evaluate(() => {
          const one = document.querySelector("fridgeside-desk")?.shadowRoot?.activeElement;
          const outline = one ? getComputedStyle(one).outlineStyle : "";
          return { name: one?.getAttribute("aria-label") ?? one?.textContent ?? "", outline };
        });
        if (!name.test(focused.name)) continue;
        expect(focused.outline, `${focused.name} shows that it has the focus`).not.toBe("none");
        return;
      }
      throw new Error(`No key leads to ${name}`);
    };
    await tabTo(/^Code$/);
    await page.keyboard.type(phone.code.toLowerCase().replace("-", ""));
    await page.keyboard.press("Enter");
    await phone.admit();
    phone.share(asked);
    await expect(desk.asked).toHaveText("What do you see at the ice bin?");
    await tabTo(/^Causes$/);
    await page.keyboard.press("ArrowRight");
    await expect(page.getByRole("tab", { name: "Chart" })).toBeFocused();
    await expect(page.getByRole("heading", { name: "The chart, and where we are" })).toBeVisible();
    await tabTo(/^Point at it: It wasn't all the way in/);
    await page.keyboard.press("Enter");
    expect(await phone.until(({ room }) => room.said.find((one) => one.by === "agent"))).toMatchObject({
      suggestion: { kind: "point", turn: "ice-bin.look", answer: "not-seated" },
    });
    await tabTo(/^Propose: It wasn't all the way in/);
    await page.keyboard.press("Enter");
    await page.keyboard.type("You said it clicked");
    await page.keyboard.press("Enter");
    const proposed = await phone.until(({ room }) =>
      room.said.find((one) => one.by === "agent" && one.suggestion.kind === "propose"),
    );
    expect(proposed).toMatchObject({ suggestion: { answer: "not-seated", why: "You said it clicked" } });
    await tabTo(/^Write to them$/);
    await page.keyboard.type("Take your time");
    await page.keyboard.press("Enter");
    await phone.until(({ room }) =>
      room.said.find((one) => one.by === "agent" && one.suggestion.kind === "line"),
    );
  });

  test("sees what became of a suggestion, and what they answered", async ({ page, desk }) => {
    const phone = await desk.meet(asked);
    await page.getByRole("button", { name: "Point at it: It sits right and has room" }).click();
    await expect(page.locator(".mirrored .pointed")).toHaveText("It sits right and has room");
    await expect(page.getByText("You're pointing at “It sits right and has room”.")).toBeVisible();
    await phone.answer("point", "taken");
    await expect(page.getByText("they said yes")).toBeVisible();
    phone.share(measuring);
    await expect(desk.asked).toHaveText("How much water comes out of the dispenser?");
    await expect(page.locator(".mirrored .pointed")).toHaveCount(0);
  });

  test("can tap nothing on their screen", async ({ page, desk }) => {
    const phone = await desk.meet(asked);
    const answers = page.locator(".mirrored .dock button");
    await answers.first().scrollIntoViewIfNeeded();
    const box = await answers.first().boundingBox();
    await page.mouse.click((box?.x ?? 0) + 20, (box?.y ?? 0) + 20);
    await answers.first().dispatchEvent("click");
    await page.getByRole("textbox", { name: "Write to them" }).fill("Only this was sent");
    await page.keyboard.press("Enter");
    const said = await phone.until(({ room }) => room.said.length > 0 && room.said);
    expect(said).toHaveLength(1);
    expect(phone.room.carried.every((body) => JSON.parse(body).entries)).toBe(true);
    await expect(desk.asked).toHaveText("What do you see at the ice bin?");
  });

  test("comes back after a reload to where they were, half a sentence included", async ({ page, desk }) => {
    const phone = await desk.meet(asked);
    await page.getByRole("textbox", { name: "Write to them" }).fill("Half a sen");
    await desk.reload();
    await page.getByRole("button", { name: /What do you see at the ice bin/ }).click();
    await expect(page.getByRole("textbox", { name: "Write to them" })).toHaveValue("Half a sen");
    await page.getByRole("textbox", { name: "Write to them" }).press("Enter");
    await phone.until(({ room }) => room.said.find((one) => one.by === "agent"));
  });

  test("has what they write wait while the householder has paused, and keeps what was said when it ends", async ({
    page,
    desk,
  }) => {
    const phone = await desk.meet(asked);
    phone.steer("pause");
    await expect(page.getByText("They've paused. What you send waits here until they go on.")).toBeVisible();
    await page.getByRole("textbox", { name: "Write to them" }).fill("Whenever you like");
    await page.keyboard.press("Enter");
    await expect(page.getByText("waits to be sent")).toBeVisible();
    expect(phone.room.said).toEqual([]);
    phone.steer("resume");
    await phone.until(({ room }) => room.said[0]);
    await expect(page.getByText("waits to be sent")).toHaveCount(0);
    phone.steer("end");
    await expect(desk.rows).toContainText("Ended");
    await expect(page.getByRole("textbox", { name: "Write to them" })).toHaveCount(0);
    await expect(page.locator(".said")).toContainText("Whenever you like");
    await page.getByRole("button", { name: /^Take it off the list/ }).click();
    await expect(desk.rows).toHaveCount(0);
  });

  test("has the one in danger first among several, whichever is looked at", async ({ page, desk }) => {
    await desk.meet(asked);
    const second = await desk.meet(measuring);
    await page.locator(".conv", { hasText: "ice bin" }).click();
    second.share(stopBy(measuring, "burning", at(90)));
    await expect(desk.rows.first()).toContainText("DANGER");
    await expect(desk.rows.first()).toContainText("something new");
    await expect(page.locator(".conv[aria-current=true]")).toContainText("ice bin");
  });

  test("is told in words why a code is refused", async ({ page, desk }) => {
    await desk.call();
    await page.getByRole("textbox", { name: "Code" }).fill("0000-0000");
    await page.keyboard.press("Enter");
    await expect(page.getByText("No phone shows this code now.")).toBeVisible();
    await expect(page.getByRole("textbox", { name: "Code" })).toHaveValue("0000-0000");
  });
});
