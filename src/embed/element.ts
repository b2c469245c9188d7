import { dataFiles } from "virtual:data";
import ownTexts from "virtual:first-turns";
import { markPage, toWebAddress } from "../loading/index.ts";
import { chooseLanguage } from "../loading/language/index.ts";
import { nextTask, waitForSignal } from "../loading/pace/index.ts";
import type { Trouble } from "../panel/frame/index.ts";
import { createActions, openingView, type Services, stopView, type View } from "../turn/index.ts";
import { localNow } from "./clock.ts";
import { EarlyAnswers } from "./early-answers.ts";
import type { Running } from "./engine.ts";
import { attributeNames, chooseSessionName, forgetSession, isKept } from "./first-options.ts";
import { createFirstTexts } from "./first-texts.ts";
import { paint } from "./paint.ts";
import { arePartsHere, createSheet, dropParts, getFirstTurn, getParts, ownSheet } from "./parts.ts";
import { keepReservedHeight } from "./reserved-height.ts";
import { clearStop, keepStop, readStop } from "./stop-mark.ts";

/** After so long without the rest, it is said that it is slow or does not come. */
const SILENCE_MS = 4000;

/** The longest pause between two tries. */
const LONGEST_PAUSE_MS = 30_000;

/**
 * The tag. It draws the opening from what this file knows by heart, and hands over to the engine when that has
 * arrived: the answers given meanwhile, with their times, and all other taps, which waited. A danger waits for
 * nothing: its stop is drawn from here. Mounting, unmounting and moving it are harmless.
 */
export class FridgesidePanel extends HTMLElement {
  static readonly observedAttributes = [...attributeNames, "lang"];

  #language = "";
  #session = "";
  #running: Running | null = null;
  #view: View | null = null;
  readonly #early = new EarlyAnswers(ownTexts, () => this.hasAttribute("flows"));
  #waiting: ((actions: NonNullable<Running>["actions"]) => void)[] = [];
  #trouble: Trouble["kind"] | null = null;
  #silence = 0;
  /** The turn that was tapped at, where another copy draws the next: that copy knows nothing of the tap. */
  #tappedAt = "";
  #paint = paint;
  /** Counts starts: an engine that arrives for an earlier start is not used. */
  #start = 0;

  #sheets = [ownSheet];

  constructor() {
    super();
    this.attachShadow({ mode: "open" });
  }

  connectedCallback(): void {
    markPage(this);
    if (this.#running) return;
    const root = this.shadowRoot as ShadowRoot;
    const reserved = createSheet("");
    root.adoptedStyleSheets = this.#sheets = [ownSheet, reserved];
    keepReservedHeight(this, root, reserved);
    this.#mount();
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
    clearTimeout(this.#silence);
    removeEventListener("storage", this.#heed);
    this.#running?.stop();
    this.#running = null;
    this.#start++;
  }

  async #mount(): Promise<void> {
    const start = ++this.#start;
    const inherited = this.closest("[lang]")?.getAttribute("lang") || navigator.language;
    const read = (name: string) => this.getAttribute(name);
    this.#language = chooseLanguage(read, inherited, Object.keys(dataFiles));
    this.#session = chooseSessionName(read);
    addEventListener("storage", this.#heed);
    if (this.#early.first.language !== this.#language) {
      if (this.#view) this.#show({ ...this.#view, turn: null });
      // Where they do not come, a danger can be reported in another language at least.
      this.#early.first = await getFirstTurn(this.#language).catch(() => ownTexts);
      if (start !== this.#start) return;
    }
    const stop = readStop(this.#session);
    this.#early.settle();
    // Somebody who comes back would see the first question flash by: wait for the engine with an empty turn.
    const isBack = isKept(this.#session) || (this.#early.isEmpty && this.#view?.lines.length);
    const view = isBack ? { ...openingView(this.#early.first, []), turn: null } : this.#early.view;
    this.#show(stop ? stopView(this.#early.first, stop.danger) : view);
    clearTimeout(this.#silence);
    this.#say(null);
    this.#silence = setTimeout(() => this.#say(this.#trouble ?? "slow"), SILENCE_MS) as never;
    this.#load(start);
  }

  async #load(start: number): Promise<void> {
    // The first question is drawn before anything else is asked for.
    if (!arePartsHere(this.#language)) await nextTask();
    for (let pause = 0; start === this.#start; pause = Math.min(2 * pause + 1000, LONGEST_PAUSE_MS))
      try {
        return await this.#run(start);
      } catch (problem) {
        if (start !== this.#start) return;
        console.error(
          "<fridgeside-panel>: the rest of the helper could not be loaded; trying again.",
          problem,
        );
        if (pause) this.#say("lost");
        await waitForSignal(pause);
      }
  }

  async #run(start: number): Promise<void> {
    const isCurrent = () => start === this.#start;
    const { engine, data, sheets } = await getParts(this.#language);
    if (!isCurrent()) return;
    const say = (trouble: Trouble["kind"] | null) => this.#running && isCurrent() && this.#say(trouble);
    const about = { language: this.#language, languages: Object.keys(dataFiles), isCurrent, say };
    let next: View | null = null;
    const running = await engine
      .startEngine(this, data, about, (view) => {
        next = view;
        if (this.#running && isCurrent()) {
          this.#trouble = null;
          this.#show(view);
        }
        if (!this.#tappedAt || view.turn?.turn === this.#tappedAt) return;
        this.#tappedAt = "";
        this.shadowRoot?.querySelector("h2")?.focus();
      })
      .catch((problem) => {
        dropParts(this.#language);
        throw problem;
      });
    if (!running) return;
    await this.#early.handOver(running.takeEarly);
    if (!isCurrent()) return running.stop();
    // A danger may have been reported meanwhile.
    running.look();
    clearTimeout(this.#silence);
    const root = this.shadowRoot as ShadowRoot;
    const focused = this.#early.waiting ? "h2" : root.activeElement?.localName;
    root.adoptedStyleSheets = [...sheets, ...this.#sheets.slice(1)];
    running.wear(root);
    // The engine came with a newer copy of this file, after a deploy.
    if (this.#paint !== engine.paint) {
      this.#paint(root, null);
      if (this.#waiting.length) this.#tappedAt = this.#view?.turn?.turn ?? "";
    }
    this.#paint = engine.paint;
    this.#running = running;
    this.#trouble = null;
    this.#early.clear();
    this.#show(next as never as View);
    if (!root.activeElement && focused === "h2") root.querySelector("h2")?.focus({ preventScroll: true });
    for (const act of this.#waiting.splice(0)) act(running.actions);
  }

  #say(trouble: Trouble["kind"] | null): void {
    this.#trouble = trouble;
    this.#show(this.#view as View);
  }

  #show(view: View): void {
    this.#view = view;
    const running = this.#running;
    const link = this.getAttribute("help-link");
    this.#paint(this.shadowRoot as ShadowRoot, {
      view,
      label: this.getAttribute("label")?.slice(0, 80),
      actions: running?.actions ?? this.#later,
      services: running?.services ?? noServices,
      texts: running?.texts ?? createFirstTexts(this.#early.first),
      screens: running?.screens ?? null,
      taken: this.#early.waiting,
      trouble: this.#trouble && {
        kind: this.#trouble,
        shop: this.getAttribute("shop-name")?.slice(0, 80) || "",
        link: link && toWebAddress(link, document.baseURI),
      },
    });
  }

  /** Acts before the engine is there. Most wait for it, in order; the opening, a danger and 'start again' do not. */
  readonly #later = createActions((name, given) => {
    const [turn = "", answer = ""] = given as string[];
    const lead = name === "answer" && this.#early.leadOf(turn, answer);
    if (name === "reportDanger") return this.#stop(turn);
    if (lead && lead[0] === "!") return this.#stop(lead.slice(1));
    if (this.#heed()) return;
    if (name === "restart") return this.#forget();
    const isChanged = name === "change" && this.#early.change(turn as never as number);
    if (name === "answer") this.#early.give(turn, answer, localNow());
    else if (!isChanged)
      this.#waiting.push((actions) => (actions[name] as (...given: never[]) => void)(...given));
    this.#show(lead || isChanged ? this.#early.view : (this.#view as View));
  });

  #drop(): void {
    this.#early.clear();
    this.#waiting = [];
  }

  /** A danger wins over all that waits and all that comes after it. */
  #stop(danger: string): void {
    keepStop(this.#session, { danger, at: localNow() });
    this.#drop();
    this.#show(stopView(this.#early.first, readStop(this.#session)?.danger ?? danger));
  }

  /** Draws a stop that was reported elsewhere and is not on screen yet, in place of all that waits. */
  readonly #heed = (): boolean => {
    const stop = readStop(this.#session);
    if (this.#running || !stop || this.#view?.turn?.ending) return false;
    this.#stop(stop.danger);
    return true;
  };

  /** Nothing is left for the engine to start again: a danger that is reported before it comes stays. */
  #forget(): void {
    clearStop(this.#session);
    forgetSession(this.#session);
    this.#drop();
    this.#show(this.#early.view);
  }
}

/** The first question looks nothing up. */
const noServices = {} as Services;
