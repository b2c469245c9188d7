import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { journalIn } from "../../src/cobrowse/client/index.ts";
import type { RoomRecord } from "../../src/cobrowse/protocol/index.ts";
import { type Journal, parseJournal } from "../../src/session/index.ts";
import { tokenFor } from "../cobrowse/relay/agents.ts";
import { type RelayProcess, startRelayProcess } from "../cobrowse/relay-process.ts";
import type { PanelPage } from "./panel-page.ts";
import { createWire, type Wire } from "./wire.ts";

/** A householder's phone and an agent's desk in two browsers, with a relay in a process of its own between them. */
export class TwoEnds {
  readonly panel: PanelPage;
  readonly desk: Page;
  readonly #folder = mkdtempSync(join(tmpdir(), "two ends "));
  readonly #origin: string;
  /** What the desk has received of the room that it joined last, by number. */
  #received = new Map<number, RoomRecord>();
  #relay!: RelayProcess;
  #wire!: Wire;

  constructor(panel: PanelPage, desk: Page, site: string) {
    this.panel = panel;
    this.desk = desk;
    this.#origin = new URL(site).origin;
    desk.on("websocket", (socket) =>
      socket.on("framereceived", ({ payload }) => {
        const message = JSON.parse(`${payload}`);
        if (message.type === "record") this.#received.set(message.seq, message);
      }),
    );
  }

  async open(): Promise<void> {
    this.#relay = await this.#start(0);
    this.#wire = await createWire(this.#relay.port);
    await this.nameRelay(this.panel.page);
    await this.desk.route("**/demo-agent-token", (route) => route.fulfill({ body: tokenFor() }));
    await this.#named(this.desk, "fridgeside-desk", this.#relay.port);
    await this.desk.goto(`${this.#origin}/desk.html`);
  }

  #start(port: number): Promise<RelayProcess> {
    return startRelayProcess(join(this.#folder, "relay.log"), port, this.#origin);
  }

  /** The phone's line goes over the wire, which can be cut. */
  nameRelay(page: Page): Promise<void> {
    return this.#named(page, "fridgeside-panel", this.#wire.port);
  }

  /** Before the script runs: the page's own markup names the demo's relay. */
  async #named(page: Page, tag: string, port: number): Promise<void> {
    await page.addInitScript(
      ([tag, relay]) => {
        document.addEventListener("readystatechange", () =>
          document.querySelector(tag as string)?.setAttribute("relay", relay as string),
        );
      },
      [tag, `ws://127.0.0.1:${port}`],
    );
  }

  /** The relay is killed at once, and started again on what it had written. */
  async killRelay(): Promise<void> {
    const { port } = this.#relay;
    await this.#relay.kill();
    this.#relay = await this.#start(port);
  }

  cut(): void {
    this.#wire.cut();
  }

  mend(): void {
    this.#wire.mend();
  }

  bar(panel = this.panel) {
    return panel.host.getByRole("region", { name: panel.text("live.title") });
  }

  async tap(key: string, values = {}, panel = this.panel): Promise<void> {
    const name = panel.text(`live.${key}`, values);
    await this.bar(panel).getByRole("button", { name, exact: true }).tap();
  }

  /** The householder asks, the agent types the code that they hear, is let in, and sees the question that is open. */
  async meet(panel = this.panel, heading = panel.turn.heading): Promise<void> {
    await panel.hasEverything();
    await panel.button(panel.text("ui.menu")).tap();
    await panel.button(panel.text("live.get")).tap();
    const groups = this.bar(panel).locator(".live-code b");
    await expect(groups).toHaveText([/^\w{4}$/, /^\w{4}$/]);
    this.#received.clear();
    const rows = await this.rows.count();
    const code = this.desk.getByRole("textbox", { name: "Code" });
    await code.fill((await groups.allTextContents()).join(" "));
    await code.press("Enter");
    await expect(this.rows).toHaveCount(rows + 1);
    await this.tap("let-in", { name: "Ash" }, panel);
    await expect(this.desk.locator(".mirrored h2")).toHaveText(heading);
  }

  get rows() {
    return this.desk.locator(".conv");
  }

  /** What the agent sees of the householder's screen is what the householder sees. */
  async sees(panel = this.panel): Promise<void> {
    await expect(this.desk.locator(".mirrored h2")).toHaveText(panel.turn.heading);
  }

  /** The journal on the phone, as it is stored. */
  async journal(panel = this.panel): Promise<Journal | null> {
    return parseJournal(JSON.parse((await panel.storedText()) ?? "null"));
  }

  /** The journal as the desk has received it: each number once, none missing. */
  received(): Journal | null {
    const records = [...this.#received.values()].sort((one, other) => one.seq - other.seq);
    expect(records.map(({ seq }) => seq)).toEqual(records.map((_, place) => place + 1));
    const bodies = records.flatMap(({ kind, body }) => (kind === "entry" ? body : []));
    return parseJournal(journalIn(bodies));
  }

  /** Both ends have one journal. */
  async agree(panel = this.panel): Promise<void> {
    await this.sees(panel);
    await expect
      .poll(() => this.received()?.entries.length)
      .toBe((await this.journal(panel))?.entries.length);
    expect(this.received()).toEqual(await this.journal(panel));
  }

  /** What the relay's file holds, to look for what must not be there. */
  written(): string {
    return readFileSync(join(this.#folder, "relay.log"), "utf8");
  }

  async close(): Promise<void> {
    await this.#wire.close();
    await this.#relay.kill();
    rmSync(this.#folder, { recursive: true });
  }
}
