import type { CDPSession, Locator, Page } from "@playwright/test";

export type Pointer = "touch" | "mouse";

/**
 * A finger or a mouse that clicks at instants of its own. The browser stamps its events with them, however long the
 * test and the page take to get there, so that nobody has to wait.
 */
export class Finger {
  readonly #page: Page;
  readonly #link: CDPSession;
  readonly #pointer: Pointer;
  /** In seconds since 1970, as the browser's protocol has it. */
  #now = 0;
  #clicks = 0;

  private constructor(page: Page, link: CDPSession, pointer: Pointer) {
    this.#page = page;
    this.#link = link;
    this.#pointer = pointer;
  }

  /** Counts the clicks of every page that is opened from now on. */
  static async on(page: Page, pointer: Pointer = "touch"): Promise<Finger> {
    await page.addInitScript(() => {
      Object.assign(window, { clicks: 0 });
      // The click that a label makes on its box has no detail.
      addEventListener(
        "click",
        ({ detail }) => Object.assign(window, { clicks: clicks + Math.sign(detail) }),
        true,
      );
    });
    return new Finger(page, await page.context().newCDPSession(page), pointer);
  }

  /** Once, and long after whatever was clicked before. */
  tap(target: Locator): Promise<void> {
    return this.#taps(target, [0]);
  }

  /**
   * Twice at the place where the target was at first, the second time `gap` milliseconds after the first.
   * @param between what a page comes to in such a time, where it is long
   * @param down how far down the target, from 0 to 1
   */
  tapTwice(target: Locator, gap: number, between?: () => Promise<void>, down = 0.5): Promise<void> {
    return this.#taps(target, [0, gap], between, down);
  }

  async #taps(target: Locator, after: number[], between?: () => Promise<void>, down = 0.5): Promise<void> {
    await target.waitFor();
    // As a person would: not under what stays at the window's edges.
    await target.evaluate((element) => {
      const { top, bottom } = element.getBoundingClientRect();
      if (top < 120 || bottom > innerHeight - 80) element.scrollIntoView({ block: "center" });
    });
    const box = await target.boundingBox();
    if (!box) throw new Error(`${target} is not to be seen`);
    const [x, y] = [Math.round(box.x + box.width / 2), Math.round(box.y + box.height * down)];
    this.#now = Math.max(Date.now() / 1000, this.#now + 5);
    this.#clicks = await this.#page.evaluate(() => clicks);
    const start = this.#now;
    // One after the other, but not waiting for what the page makes of them, unless a test says for what.
    const downs = after.map((gap, index) => () => this.#down(x, y, start + gap / 1000, index + 1));
    if (between) {
      for (const [place, down] of downs.entries()) {
        if (place) await between();
        await down();
      }
    } else await Promise.all(downs.map((down) => down()));
    this.#now = start + 1;
    const seen = this.#clicks + after.length;
    await this.#page.waitForFunction((count) => clicks >= count, seen);
    await this.#page.evaluate(() => new Promise(requestAnimationFrame));
  }

  async #down(x: number, y: number, at: number, clickCount: number): Promise<void> {
    const up = at + 0.03;
    if (this.#pointer === "mouse") {
      const event = { x, y, button: "left", clickCount } as const;
      await Promise.all([
        this.#link.send("Input.dispatchMouseEvent", { type: "mousePressed", ...event, timestamp: at }),
        this.#link.send("Input.dispatchMouseEvent", { type: "mouseReleased", ...event, timestamp: up }),
      ]);
    } else {
      const touchPoints = [{ x, y }];
      await Promise.all([
        this.#link.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints, timestamp: at }),
        this.#link.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [], timestamp: up }),
      ]);
    }
  }
}

declare const clicks: number;
