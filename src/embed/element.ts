import { dataAddress, dataFiles } from "virtual:data";
import firstTurns from "virtual:first-turns";
import type { Actions, Services, Texts, View } from "../session/index.ts";
import { firstSheet } from "../ui/chat/index.ts";
import { icePathSheet } from "../ui/pictures/index.ts";
import { breath } from "./breath.ts";
import type { EngineData, Running } from "./engine.ts";
import { attributeNames, chooseLanguage, chooseSessionName, isKept } from "./first-options.ts";
import laterAddress from "./later.css?url&no-inline";
import { markPage } from "./page-theme.ts";
import { paint } from "./paint.ts";

/**
 * The tag. It draws the first question at once from what this file knows by heart, and hands over to the engine
 * when that has arrived; taps made meanwhile wait for it. Mounting, unmounting and moving it are harmless.
 */
export class FridgesidePanel extends HTMLElement {
  static readonly observedAttributes = [...attributeNames, "lang"];

  #language = "";
  #running: Running | null = null;
  #view: View | null = null;
  #waiting: ((actions: Actions) => void)[] = [];
  #paint = paint;
  /** Counts starts: an engine that arrives for an earlier start is not used. */
  #start = 0;

  constructor() {
    super();
    const root = this.attachShadow({ mode: "open" });
    root.adoptedStyleSheets = [sheet];
  }

  connectedCallback(): void {
    markPage(this);
    if (!this.#running) this.#mount();
  }

  disconnectedCallback(): void {
    // A page that moves the tag takes it out and puts it in again within one task.
    queueMicrotask(() => {
      if (this.isConnected) return;
      this.#halt();
      this.#paint(this.shadowRoot as ShadowRoot, null);
    });
  }

  attributeChangedCallback(name: string, before: string | null, after: string | null): void {
    // The rules see to the colours; a new start would take away what is being typed.
    if (name === "theme") markPage(this);
    if (name === "theme" || before === after || !this.isConnected || !this.#start) return;
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
    const read = (name: string) => this.getAttribute(name);
    this.#language = chooseLanguage(read, inherited, Object.keys(dataFiles));
    const first = firstTurns[this.#language]?.view as View;
    // Somebody who comes back would see the first question flash by: wait for the engine with an empty turn.
    const isBack = isKept(chooseSessionName(read)) || this.#view?.lines.length;
    this.#show(isBack ? { ...first, turn: null } : first);
    this.#load(++this.#start);
  }

  async #load(start: number): Promise<void> {
    const language = this.#language;
    // The first question is drawn before anything else is asked for.
    await breath();
    try {
      const [engine, data, laterRules] = await Promise.all([
        import("./engine.ts"),
        fetchBuilt(dataAddress(language)).then((file) => file.json() as Promise<EngineData>),
        fetchBuilt(laterAddress).then((file) => file.text()),
      ]);
      const about = { language, languages: Object.keys(dataFiles) };
      const running = await engine.startEngine(this, data, about, (view) => {
        this.#view = view;
        if (this.#running) this.#show(view);
      });
      await breath();
      if (start !== this.#start) return running.stop();
      const root = this.shadowRoot as ShadowRoot;
      root.adoptedStyleSheets = [sheet, createSheet(laterRules)];
      // A page that asks for this file with a query (`?v=2`) has it twice: the engine came with the other one.
      if (this.#paint !== engine.paint) this.#paint(root, null);
      this.#paint = engine.paint;
      this.#running = running;
      this.#show(this.#view as View);
      for (const act of this.#waiting.splice(0)) act(running.actions);
    } catch (problem) {
      if (start !== this.#start) return;
      console.error("<fridgeside-panel>: the rest of the helper could not be loaded; trying again.", problem);
      setTimeout(() => start === this.#start && this.#load(start), 4000);
    }
  }

  #show(view: View): void {
    this.#view = view;
    const running = this.#running;
    const services = running?.services ?? noServices;
    const known = firstTurns[this.#language]?.texts ?? {};
    const texts: Texts = running?.texts ?? ((key) => known[key] ?? "");
    const actions = running?.actions ?? this.#later;
    const screens = running?.screens ?? null;
    this.#paint(this.shadowRoot as ShadowRoot, { view, actions, services, texts, screens });
  }

  /** Acts that wait for the engine, in order. */
  readonly #later = new Proxy({} as Actions, {
    get:
      (_all, name: keyof Actions) =>
      (...given: never[]) =>
        this.#waiting.push((actions) => (actions[name] as (...given: never[]) => void)(...given)),
  });
}

/** A file that was built with this very one, named by its content. */
async function fetchBuilt(address: string): Promise<Response> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${response.status} for ${address}`);
  return response;
}

/** The first question looks nothing up. */
const noServices = {} as Services;

/** Shared by all panels of a page. */
const sheet = createSheet(`${firstSheet}${icePathSheet}`);

/** A constructed sheet; a `<style>` element would need the page's permission. */
function createSheet(rules: string): CSSStyleSheet {
  const made = new CSSStyleSheet();
  made.replaceSync(rules);
  return made;
}
