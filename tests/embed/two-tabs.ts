import { createController } from "../../src/embed/controller.ts";
import * as door from "../../src/embed/door.ts";
import { createLogStore, type LogStore } from "../../src/embed/log-store.ts";
import { createStops, stopKey } from "../../src/embed/stop-mark.ts";
import type { Controller } from "../../src/embed/surroundings.ts";
import { type Guide, type LogEvent, parseJournal, standingOf } from "../../src/session/index.ts";
import type { View } from "../../src/turn/index.ts";
import type { Dice } from "../session/walker.ts";

/** A storage that can be full or denied, and tells who listens of each write. */
export class SharedStorage {
  readonly kept = new Map<string, string>();
  state: "open" | "full" | "denied" = "open";
  written = () => {};

  /** As one tab sees it. */
  get place(): Storage {
    return {
      getItem: (key: string) => {
        this.#check("denied");
        return this.kept.get(key) ?? null;
      },
      setItem: (key: string, text: string) => {
        this.#check("full", "denied");
        this.kept.set(key, text);
        this.written();
      },
      removeItem: (key: string) => {
        this.#check("denied");
        if (this.kept.delete(key)) this.written();
      },
    } as Storage;
  }

  #check(...states: string[]): void {
    if (states.includes(this.state)) throw new DOMException(this.state, "QuotaExceededError");
  }
}

type Kind = "act" | "change" | "restart";

type Job = { tab: Tab; work(): void };

/** One tab: what it shows, and what the person in front of it was shown. */
class Tab {
  view!: View;
  controller!: Controller;
  store!: LogStore;
  /** Storage events on their way: late, and in any order. */
  news = 0;
  /** A stop that was reported here and that no 'start again' has followed. */
  isStopped = false;
  readonly #own = new SharedStorage();
  readonly #pair: Pair;

  constructor(pair: Pair) {
    this.#pair = pair;
    this.load();
  }

  /** The page is loaded, or loaded again. */
  load(): void {
    const { shared, guide, clock } = this.#pair;
    this.#pair.jobs = this.#pair.jobs.filter(({ tab }) => tab !== this);
    this.news = 0;
    this.store = createLogStore("panel", () => shared.place);
    const stops = createStops([() => shared.place, () => this.#own.place]);
    this.controller = createController({
      door: () => door,
      guide,
      store: this.store,
      stop: {
        read: () => stops.readStop("panel"),
        keep: (mark) => stops.keepStop("panel", mark),
        clear: () => {
          this.#pair.clearsStop(this);
          stops.clearStop("panel");
        },
      },
      exclusively: (work) => this.#pair.exclusively(this, work),
      newId: () => `${this.#pair.ids++}`,
      model: null,
      texts: (key) => (key === "ui.locale" ? "en-GB" : key),
      now: clock.now,
      ended: () => {},
      show: (view) => {
        this.view = view;
        this.#pair.shows(this);
      },
    });
  }

  /** The answers of the log on screen. */
  answers(): LogEvent[] {
    const journal = parseJournal(JSON.parse(this.store.read() ?? "{}"));
    return journal ? standingOf(journal).log.events.filter((event) => "turn" in event) : [];
  }

  has(notice: string): boolean {
    return this.view.notices.some(({ id }) => id === notice);
  }
}

/** Two tabs of one session, acting at random; what must hold is looked at after every step. */
export class Pair {
  readonly shared = new SharedStorage();
  readonly clock: { now(): string };
  readonly guide: Guide;
  readonly faults: string[] = [];
  readonly did: string[] = [];
  jobs: Job[] = [];
  ids = 0;
  readonly #tabs: [Tab, Tab];
  readonly #dice: Dice;
  readonly #hasLocks: boolean;
  /** Answers that were shown as taken, by their instant, and those that a person who saw them gave up. */
  readonly #taken = new Set<string>();
  readonly #givenUp = new Set<string>();
  #minutes = 0;
  #kind: Kind = "act";

  constructor(guide: Guide, dice: Dice) {
    this.guide = guide;
    this.#dice = dice;
    this.#hasLocks = dice(2) === 0;
    this.clock = { now: () => new Date(Date.UTC(2026, 0, 1) + this.#minutes * 60_000).toISOString() };
    const first = new Tab(this);
    this.#tabs = [first, new Tab(this)];
    this.shared.written = () => {
      for (const tab of this.#tabs) tab.news++;
    };
  }

  /** Work under the lock: done in the order it was asked for, some time later. Without locks it is done at once. */
  exclusively(tab: Tab, work: () => void): void {
    const kind = this.#kind;
    const seen = tab.answers().map(({ at }) => at);
    const job = () => {
      work();
      if (kind === "act") return;
      const left = tab.answers().map(({ at }) => at);
      for (const at of seen) if (!left.includes(at)) this.#givenUp.add(at);
      if (kind === "restart" && left.length === 0) for (const at of this.#taken) this.#givenUp.add(at);
    };
    if (this.#hasLocks) this.jobs.push({ tab, work: job });
    else job();
  }

  shows(tab: Tab): void {
    if (tab.has("memory-only")) return;
    const answers = tab.answers();
    if (answers.length === tab.view.lines.length) for (const { at } of answers) this.#taken.add(at);
  }

  clearsStop(tab: Tab): void {
    if (this.#isStoppedFor(tab) && tab.view.turn?.turn !== "stopped.end")
      this.#fault("a stop that was not on screen was started again from");
    if (!this.#isStoppedFor(tab)) return;
    for (const each of this.#tabs) each.isStopped = false;
  }

  step(): void {
    this.#minutes += 1;
    const tab = this.#tabs[this.#dice(2)] as Tab;
    const chance = this.#dice(100);
    if (chance < 50) this.#acts(tab);
    else if (chance < 70) this.#hearsOrWorks(tab);
    else if (chance < 78) this.#reloads(tab);
    else if (chance < 82) this.#reports(tab);
    else if (chance < 88) this.#changes(tab);
    else if (chance < 91) this.#restarts(tab);
    else if (chance < 95) this.#turns();
    else if (chance < 98) tab.controller.setOffline(this.#dice(2) === 0);
    else this.#minutes += this.#dice(26 * 60);
    this.#look(tab);
  }

  /** Everything that was on its way arrives; then both tabs are closed and opened again. */
  end(): void {
    this.shared.state = "open";
    for (let round = 0; round < 3; round++) {
      for (const tab of this.#tabs) tab.controller.tick();
      while (this.jobs.length) this.jobs.shift()?.work();
    }
    for (const tab of this.#tabs) this.#look(tab);
    for (const tab of this.#tabs) this.#reloads(tab);
    for (const tab of this.#tabs) this.#look(tab);
  }

  #acts(tab: Tab): void {
    const { turn } = tab.view;
    if (!turn || turn.kind === "ending") return;
    this.did.push(`${this.#tabs.indexOf(tab)} answers ${turn.turn}`);
    this.#kind = "act";
    const answers = turn.answers.map(({ id }) => id);
    const answer = turn.turn === "opening.danger" ? "none" : answers[this.#dice(answers.length)];
    const { actions } = tab.controller;
    if (turn.kind === "model") actions.giveModel(turn.turn, null, "");
    else if (turn.gate && this.#dice(2))
      actions.confirmGate(turn.turn, this.guide.flow.gates[turn.gate.id]?.items ?? []);
    else actions.answer(turn.turn, answer ?? "cannot");
  }

  #hearsOrWorks(tab: Tab): void {
    this.#kind = "act";
    if (this.#dice(2)) this.jobs.shift()?.work();
    else if (tab.news > 0) {
      tab.news--;
      tab.controller.tick();
    }
  }

  #reloads(tab: Tab): void {
    // A browser that denies its storage has nothing that a page could come back to.
    if (this.shared.state === "denied") return;
    this.did.push(`${this.#tabs.indexOf(tab)} reloads`);
    tab.load();
  }

  #reports(tab: Tab): void {
    if (!tab.view.ways.includes("danger")) return;
    this.did.push(`${this.#tabs.indexOf(tab)} reports`);
    this.#kind = "act";
    tab.controller.actions.reportDanger("gas");
    tab.isStopped = true;
  }

  #changes(tab: Tab): void {
    const lines = tab.view.lines.filter(({ canChange }) => canChange);
    const line = lines[this.#dice(Math.max(1, lines.length))];
    if (!line) return;
    this.did.push(`${this.#tabs.indexOf(tab)} changes ${line.turn}`);
    this.#kind = "change";
    tab.controller.actions.change(line.index);
  }

  #restarts(tab: Tab): void {
    this.did.push(`${this.#tabs.indexOf(tab)} restarts`);
    this.#kind = "restart";
    tab.controller.actions.restart();
  }

  #turns(): void {
    const states = ["open", "open", "full", "denied"] as const;
    this.shared.state = states[this.#dice(states.length)] ?? "open";
    this.did.push(this.shared.state);
  }

  #isStoppedFor(tab: Tab): boolean {
    return tab.isStopped || (this.shared.state !== "denied" && this.shared.kept.has(stopKey("panel")));
  }

  #look(tab: Tab): void {
    tab.controller.tick();
    if (this.#isStoppedFor(tab) && tab.view.turn?.turn !== "stopped.end")
      this.#fault(`${this.#tabs.indexOf(tab)} shows ${tab.view.turn?.turn} after a stop`);
    const kept = [...this.shared.kept.values(), ...this.#tabs.map(({ store }) => store.read() ?? "")].join();
    const aside = this.#tabs.map(({ store }) => JSON.stringify(store.readAside())).join();
    for (const at of this.#taken)
      if (!this.#givenUp.has(at) && !kept.includes(at) && !aside.includes(at)) this.#fault(`${at} is lost`);
  }

  #fault(what: string): void {
    this.faults.push(`${what}: ${this.did.join(", ")}`);
  }
}
