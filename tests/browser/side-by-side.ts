import type { Browser, Page } from "playwright";
import { startDemoRelay, tokenPath } from "../../demo/serve/demo-relay.ts";
import { serveFolders } from "../../demo/serve/serve-folders.ts";
import type { Texts } from "../../src/turn/index.ts";

/** What stands in the picture: a householder at this answer's turn, with one proposal of the agent's. */
type Scene = { walk(page: Page): Promise<void>; proposed: string; why: string };

/**
 * A householder's phone and an agent's desk, each as they see it, through the demo's own relay.
 * @param folders of the demo and of what was built for it
 */
export async function sideBySide(
  browser: Browser,
  folders: string[],
  texts: Texts,
  { walk, proposed, why }: Scene,
): Promise<{ phone: Buffer; desk: Buffer }> {
  let token = () => "";
  const { server, address } = await serveFolders(folders, 0, new Map([[tokenPath, () => token()]]));
  const relay = await startDemoRelay(new URL(address).origin);
  token = relay.token;
  const phone = await browser.newContext({
    ...{ viewport: { width: 360, height: 820 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true },
    locale: "en-GB",
  });
  const desk = await browser.newContext({ viewport: { width: 1280, height: 820 }, locale: "en-GB" });
  try {
    const [panel, board] = [await phone.newPage(), await desk.newPage()];
    await panel.goto(address);
    await walk(panel);
    await panel.waitForLoadState("networkidle");
    const tap = (name: string) => panel.getByRole("button", { name, exact: true }).tap();
    await tap(texts("ui.menu"));
    await tap(texts("live.get"));
    const groups = panel.locator(".live-code b");
    await groups.nth(1).waitFor();
    await board.goto(`${address}desk.html`);
    const code = board.getByRole("textbox", { name: "Code" });
    await code.fill((await groups.allTextContents()).join(" "));
    await code.press("Enter");
    await tap(texts("live.let-in", { name: "Rowan" }));
    await board.getByRole("button", { name: `Propose: ${proposed}` }).click();
    await board.keyboard.type(why);
    await board.keyboard.press("Enter");
    await panel.getByText(why).waitFor();
    await board.locator("fridgeside-desk").evaluate((one) => one.scrollIntoView());
    const take = (page: Page) => page.screenshot({ animations: "disabled", caret: "hide" });
    return { phone: await take(panel), desk: await take(board) };
  } finally {
    await phone.close();
    await desk.close();
    await relay.close();
    server.closeAllConnections();
    server.close();
  }
}
