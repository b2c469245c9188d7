import { deskTexts, drawingAddress } from "virtual:desk";
import { h, render } from "preact";
import { createDrawings, createShopCatalogue, markPage } from "../loading/index.ts";
import { createPicture } from "../panel/pictures/index.ts";
import { createDeskRooms, type DeskRooms } from "./desk-rooms.ts";
import { createDial } from "./dial.ts";
import { openDeskGuide } from "./guide.ts";
import { createKeptRooms } from "./kept-rooms.ts";
import { attributeNames, type DeskOptions, readDeskOptions } from "./options.ts";
import { Desk, deskSheets } from "./screens/index.ts";
import { createShopParts } from "./shop-parts.ts";
import { fetchToken, tokenIn } from "./token.ts";

/** How often the desk looks at the clock: waits run out, and 'two minutes ago' becomes three. */
const LOOK_MS = 20_000;

/**
 * The tag of a support page. Everything is read from its attributes when it is put on the page, or one of them changes;
 * the rooms that were joined outlive that in the tab's own storage.
 */
export class FridgesideDesk extends HTMLElement {
  static readonly observedAttributes = [...attributeNames, "lang"];

  /** The agent's token, for a page that has it at hand; else it is asked for at `token-from`. */
  token: string | null = null;

  #desk: DeskRooms | null = null;
  #stop = () => {};
  /** Counts starts: what arrives for an earlier one is not used. */
  #start = 0;

  constructor() {
    super();
    this.attachShadow({ mode: "open" });
  }

  connectedCallback(): void {
    markPage(this);
    const root = this.shadowRoot as ShadowRoot;
    if (!root.adoptedStyleSheets.length)
      root.adoptedStyleSheets = deskSheets.map((rules) => {
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(rules);
        return sheet;
      });
    if (!this.#start) void this.#mount();
  }

  disconnectedCallback(): void {
    // A page that moves the tag takes it out and puts it in again within one task.
    queueMicrotask(() => {
      if (!this.isConnected) this.#halt();
    });
  }

  attributeChangedCallback(name: string, before: string | null, after: string | null): void {
    if (name === "theme") markPage(this);
    if (name === "theme" || before === after || !this.isConnected || !this.#start) return;
    this.#halt();
    void this.#mount();
  }

  #halt(): void {
    this.#start = 0;
    this.#stop();
    this.#stop = () => {};
    this.#desk?.close();
    this.#desk = null;
    render(null, this.shadowRoot as ShadowRoot);
  }

  #say(text: string): void {
    render(
      h("div", { class: "desk at-list" }, h("p", { class: "none", role: "status" }, text)),
      this.shadowRoot as ShadowRoot,
    );
  }

  async #mount(): Promise<void> {
    starts += 1;
    const start = starts;
    this.#start = start;
    const inherited = this.closest("[lang]")?.getAttribute("lang") || navigator.language;
    const languages = Object.keys(deskTexts);
    const options = readDeskOptions(
      (name) => this.getAttribute(name),
      inherited,
      languages,
      document.baseURI,
    );
    const own = deskTexts[options.language] ?? {};
    const { loading, broken, "no-relay": noRelay } = (own as { desk: Record<string, string> }).desk;
    if (!options.relays[0]) return this.#say(noRelay ?? "");
    this.#say(loading ?? "");
    const get: typeof fetch = (address, settings) => fetch(address, settings);
    try {
      const guide = await openDeskGuide(options.language, own, get);
      if (start === this.#start) this.#open(options, guide);
    } catch (problem) {
      if (start !== this.#start) return;
      console.error("<fridgeside-desk>: the texts could not be loaded.", problem);
      this.#say(broken ?? "");
    }
  }

  #open(options: DeskOptions, guide: Awaited<ReturnType<typeof openDeskGuide>>): void {
    const { language, relays, catalogue, tokenFrom } = options;
    const get: typeof fetch = (address, settings) => fetch(address, settings);
    const clock = () => new Date().toISOString();
    const drawings = createDrawings((id) => drawingAddress(id, language), get);
    const shared = {
      texts: guide.texts,
      parts: createShopParts(catalogue ? createShopCatalogue(catalogue, get) : null),
      picture: createPicture(drawings),
      clock,
    };
    let isDrawing = false;
    const desk = createDeskRooms({
      guide,
      dial: createDial(relays),
      kept: createKeptRooms(() => sessionStorage),
      token: async () => tokenIn(this.token) ?? (tokenFrom ? fetchToken(tokenFrom, get) : null),
      now: Date.now,
      clock,
      after: (milliseconds, work) => {
        const timer = setTimeout(work, milliseconds);
        return () => clearTimeout(timer);
      },
      newKey: () => crypto.randomUUID(),
      draw: () => {
        // What comes together is drawn once.
        if (isDrawing) return;
        isDrawing = true;
        queueMicrotask(draw);
      },
    });
    const draw = () => {
      isDrawing = false;
      if (this.#desk === desk) render(h(Desk, { desk, ...shared }), this.shadowRoot as ShadowRoot);
    };
    this.#desk = desk;
    const timer = setInterval(draw, LOOK_MS);
    const wake = () => desk.wake();
    addEventListener("online", wake);
    this.#stop = () => {
      clearInterval(timer);
      removeEventListener("online", wake);
    };
    draw();
  }
}

let starts = 0;
