import { flowAddress, textFiles, textsAddress } from "virtual:data";
import firstTurns from "virtual:first-turns";
import { h, render } from "preact";
import type { Flow } from "../flow/index.ts";
import type { Actions, Resource, Services, Texts, View } from "../session/index.ts";
import { firstSheet, Panel } from "../ui/chat/index.ts";
import { icePathSheet } from "../ui/pictures/index.ts";
import type { Running } from "./engine.ts";
import { createLogStore, type LogStore } from "./log-store.ts";
import { attributeNames, type Options, readOptions } from "./options.ts";

/**
 * The tag. It draws the first question at once from what this file knows by heart, and hands over to the engine
 * when that has arrived; taps made meanwhile wait for it. Mounting, unmounting and moving it are harmless.
 */
export class FridgesidePanel extends HTMLElement {
  static readonly observedAttributes = [...attributeNames, "lang"];

  #options: Options | null = null;
  #store: LogStore | null = null;
  #running: Running | null = null;
  #view: View | null = null;
  #waiting: ((actions: Actions) => void)[] = [];
  /** Counts starts: an engine that arrives for an earlier start is not used. */
  #start = 0;

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = [sheetOf(firstRules)];
  }

  connectedCallback(): void {
    if (!this.#running) this.#mount();
  }

  disconnectedCallback(): void {
    // A page that moves the tag takes it out and puts it in again within one task.
    queueMicrotask(() => {
      if (this.isConnected) return;
      this.#halt();
      render(null, this.shadowRoot as ShadowRoot);
    });
  }

  attributeChangedCallback(_name: string, before: string | null, after: string | null): void {
    if (before === after || !this.isConnected || !this.#options) return;
    this.#halt();
    this.#mount();
  }

  #halt(): void {
    this.#running?.stop();
    this.#running = null;
    this.#start++;
  }

  #mount(): void {
    const inherited = this.closest("[lang]")?.getAttribute("lang") || navigator.language;
    const known = Object.keys(textFiles);
    const read = (name: string) => this.getAttribute(name);
    const { options, complaints } = readOptions(read, inherited, known, document.baseURI);
    for (const complaint of complaints) console.warn(complaint);
    if (options.sessionName !== this.#options?.sessionName) this.#store = createLogStore(options.sessionName);
    this.#options = options;
    const store = this.#store as LogStore;
    const first = firstTurns[options.language]?.view as View;
    // Somebody who comes back would see the first question flash by: wait for the engine with an empty turn.
    this.#show(store.read() ? { ...first, turn: null } : first);
    this.#load(options, store, this.#start);
  }

  async #load(options: Options, store: LogStore, start: number): Promise<void> {
    try {
      const [engine, flow, resources] = await Promise.all([
        import("./engine.ts"),
        fetchData<Flow>(flowAddress()),
        fetchData<Record<string, Resource>>(textsAddress(options.language)),
      ]);
      if (start !== this.#start) return;
      const root = this.shadowRoot as ShadowRoot;
      root.adoptedStyleSheets = [sheetOf(firstRules), sheetOf(engine.laterRules)];
      let ready = false;
      const show = (view: View) => {
        this.#view = view;
        if (ready) this.#show(view);
      };
      this.#running = engine.startEngine(this, options, { flow, resources }, store, show);
      ready = true;
      this.#show(this.#view as View);
      for (const act of this.#waiting.splice(0)) act(this.#running.actions);
    } catch (problem) {
      if (start !== this.#start) return;
      console.error("<fridgeside-panel>: the rest of the helper could not be loaded; trying again.", problem);
      setTimeout(() => start === this.#start && this.#load(options, store, start), 4000);
    }
  }

  #show(view: View): void {
    this.#view = view;
    const running = this.#running;
    const services = running?.services ?? noServices;
    const known = firstTurns[this.#options?.language ?? ""]?.texts ?? {};
    const texts: Texts = running?.texts ?? ((key) => known[key] ?? "");
    const actions = running?.actions ?? this.#later;
    const screens = running?.screens ?? null;
    render(h(Panel, { view, actions, services, texts, screens }), this.shadowRoot as ShadowRoot);
  }

  /** Acts that wait for the engine, in order. */
  readonly #later = new Proxy({} as Actions, {
    get:
      (_all, name: keyof Actions) =>
      (...given: never[]) =>
        this.#waiting.push((actions) => (actions[name] as (...given: never[]) => void)(...given)),
  });
}

/** Data that was built with this very file, named by its content. */
async function fetchData<T>(address: string): Promise<T> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${response.status} for ${address}`);
  return response.json() as Promise<T>;
}

/** The first question looks nothing up. */
const noServices = {} as Services;

const firstRules = `${firstSheet}${icePathSheet}`;

const sheets = new Map<string, CSSStyleSheet>();

/** One constructed sheet for all panels of a page; a `<style>` element would need the page's permission. */
function sheetOf(rules: string): CSSStyleSheet {
  const known = sheets.get(rules) ?? new CSSStyleSheet();
  if (!sheets.has(rules)) known.replaceSync(rules);
  sheets.set(rules, known);
  return known;
}
