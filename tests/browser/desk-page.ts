import { expect, type Page } from "@playwright/test";
import type { Relay } from "../../src/cobrowse/relay/index.ts";
import { type Session, startSession } from "../../src/session/index.ts";
import { tokenFor } from "../cobrowse/relay/agents.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow } from "../own-flow.ts";
import { type Answers, at, follow, healthy } from "../session/drive.ts";
import { DeskPhone, startRelayFor } from "./desk-phone.ts";

const guide = guideFor(ownFlow);

/** A plumbed machine that makes no ice, answered as far as a turn. */
export const walkTo = (stop: string, answers: Answers = {}, model: string | null = null): Session =>
  follow(startSession(guide, at(0), model), { ...healthy, ...answers }, stop);

/** The demo's support page on a relay of its own, and the householders who call. */
export class DeskPage {
  readonly page: Page;
  readonly #origin: string;
  #relay: { relay: Relay; port: number } | null = null;
  #phones: DeskPhone[] = [];

  constructor(page: Page, site: string) {
    this.page = page;
    this.#origin = new URL(site).origin;
  }

  async open(): Promise<void> {
    this.#relay = await startRelayFor(this.#origin);
    await this.page.route("**/demo-agent-token", (route) => route.fulfill({ body: tokenFor() }));
    await this.page.goto("/desk.html");
    await this.#name();
  }

  /** The page's markup names the demo's own relay. */
  async #name(): Promise<void> {
    const address = `ws://127.0.0.1:${this.#relay?.port}`;
    await this.page
      .locator("fridgeside-desk")
      .evaluate((desk, to) => desk.setAttribute("relay", to), address);
    await expect(this.page.getByRole("textbox", { name: "Code" })).toBeVisible();
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.#name();
  }

  /** A householder opens a room. */
  async call(): Promise<DeskPhone> {
    const phone = new DeskPhone(this.#relay?.port ?? 0, this.#origin);
    this.#phones.push(phone);
    await phone.until(({ code }) => code);
    return phone;
  }

  /** A householder opens a room, and the agent joins it by the code and is let in. */
  async meet(session: Session): Promise<DeskPhone> {
    const phone = await this.call();
    const rooms = await this.rows.count();
    const code = this.page.getByRole("textbox", { name: "Code" });
    await code.fill(phone.code.toLowerCase());
    await code.press("Enter");
    await expect(this.rows).toHaveCount(rooms + 1);
    await phone.admit();
    phone.share(session);
    await expect(this.page.locator(".mirrored h2")).toBeAttached();
    return phone;
  }

  /** The conversations of the list. */
  get rows() {
    return this.page.locator(".conv");
  }

  /** The question on the mirrored screen. */
  get asked() {
    return this.page.locator(".mirrored h2");
  }

  async close(): Promise<void> {
    for (const phone of this.#phones) phone.close();
    await this.#relay?.relay.close();
  }
}
