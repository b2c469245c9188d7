import { expect, type Locator, type Page } from "@playwright/test";
import type { Reading } from "../../src/instruments/index.ts";
import {
  changeAnswer,
  type Held,
  type LogEvent,
  leftOf,
  putBack,
  record,
  resume,
  type Session,
  settle,
} from "../../src/session/index.ts";
import { type Ending, linesOf, type Texts, type Turn, turnOf } from "../../src/turn/index.ts";
import { type Answers, runsOut } from "../session/drive.ts";
import { soundAnswer } from "../session/reach.ts";
import { violationsOn } from "./axe.ts";
import { flat, flow, freshSession, guide, morning, namesOfParts, sessionAt, textsIn } from "./expected.ts";
import { tickAll } from "./gates.ts";
import { Greeting, says, seesHello } from "./greeting.ts";
import { enterReading, withConditions } from "./instruments.ts";
import { actsOf, eventsIn, keptLately, keptText, openerOf, turnAgain } from "./kept-logs.ts";
import { nowOn } from "./page-clock.ts";
import { readScreen } from "./read-screen.ts";
import { watchScenarioFiles } from "./scenario-files.ts";
import { wayTo } from "./ways.ts";

type Settings = { language?: string; sessionName?: string; keeps?: boolean; axe?: boolean };

/**
 * A person with the panel in front of them. Beside it runs a session of its own that takes the same acts; after
 * each act the screen must show that session's turn, and the stored log must hold that session's events.
 */
export class PanelPage {
  readonly page: Page;
  readonly host: Locator;
  readonly heading: Locator;
  readonly texts: Texts;
  session: Session;
  #held: Held[] = [];
  readonly #storeKey: string;
  readonly #keeps: boolean;
  readonly #axe: boolean;
  readonly #greeting = new Greeting();
  /** Waits for all that comes in idle time: a page that has it works without a connection. */
  readonly hasEverything: () => Promise<void>;
  #turn: { of: Session; is: Turn } | null = null;

  constructor(page: Page, settings: Settings = {}) {
    const { language = "en-GB", sessionName = "panel", keeps = true, axe = true } = settings;
    this.page = page;
    this.texts = textsIn(language);
    this.#storeKey = `fridgeside:${sessionName}`;
    this.#keeps = keeps;
    this.#axe = axe;
    this.hasEverything = watchScenarioFiles(page);
    const mark = sessionName === "panel" ? "fridgeside-panel" : `[session-name="${sessionName}"]`;
    this.host = page.locator(mark);
    this.heading = this.host.getByRole("heading", { level: 2 });
    this.session = freshSession(morning);
  }

  /** The turn that must be on screen. */
  get turn(): Turn {
    if (this.#turn?.of !== this.session)
      this.#turn = { of: this.session, is: turnOf(this.session, this.texts, this.session.log.started) };
    return this.#turn.is;
  }

  button(name: string): Locator {
    return this.host.getByRole("button", { name, exact: true });
  }

  /** A text of locales/. @throws Error for a key without one, which would match anything on the page. */
  text(key: string, values?: Record<string, string | number>): string {
    const text = this.texts(key, values);
    if (!text) throw new Error(`No text "${key}"`);
    return text;
  }

  /** Now by the page's clock, with the page's own offset. */
  now(): Promise<string> {
    return nowOn(this.page);
  }

  /** Opens a page with nothing stored. Until the engine is there a danger is taken in another way: see real-life/. */
  async open(path = "index.html"): Promise<void> {
    await this.page.goto(path);
    await expect(this.host.locator(".notices")).toBeAttached();
    this.#greeting.begin();
    this.session = freshSession(await this.now());
    await this.#shows();
  }

  /** Opens a page on which this session was left some time ago. */
  async openAt(session: Session, path = "index.html"): Promise<void> {
    await this.page.goto("blank.html");
    const now = Date.parse(await this.now());
    const last = session.log.events.at(-1)?.at ?? session.log.started;
    if (Date.parse(last) > now) await this.page.clock.setSystemTime(last);
    // By the real clock a session of these tests was left long ago, and the panel would start a new one.
    const left = { ...session, log: keptLately(session.log, now) };
    const log = keptText(left.log);
    await this.page.evaluate(
      ([key, value]) => localStorage.setItem(key as string, value as string),
      [this.#storeKey, log],
    );
    await this.page.goto(path);
    await this.#resumed(left);
  }

  /** Opens a page on which somebody had come to this turn; what `answers` names was answered so. */
  openWhere(turn: string, answers: Answers = {}, path?: string, cause?: string): Promise<void> {
    return this.openAt(sessionAt(turn, answers, cause), path);
  }

  /** Opens a page in a browser that keeps this session already. */
  async openAgain(left: Session, path = "index.html"): Promise<void> {
    await this.page.goto(path);
    await this.#resumed(left);
  }

  /** Names a complaint to the turn that greets. */
  async says(complaint?: string, say = says): Promise<void> {
    this.#held = [await say(this, complaint)];
    this.#greeting.begin(true);
    await this.#shows("focused");
  }

  async answer(id: string): Promise<void> {
    if (this.#greeting.isShown(this.session)) {
      const led = await this.#greeting.answer(this, id, freshSession(this.session.log.started));
      if (!led) return;
      this.session = led.session;
      this.#held = led.held;
      return this.#shows("focused");
    }
    const { turn, answers } = this.turn;
    const text = answers.find((each) => each.id === id)?.text;
    if (!text) throw new Error(`${turn} has no answer "${id}"`);
    await this.button(text).tap();
    await this.took({ type: "answered", turn, answer: id, at: await this.now() });
  }

  /** The one button that opens a gate, by the general words or the gate's own. */
  get confirmButton(): Locator {
    const own = this.turn.answers.find((each) => each.id === "ready")?.text ?? "";
    return this.button(own).or(this.button(this.text("measure.gate-confirm")));
  }

  /**
   * Ticks every line of a gate, each must have come unticked, and confirms.
   * @param how "at once" where a test is about what lies behind the gate: a dozen taps take their time
   */
  async confirmGate(how: "by tapping" | "at once" = "by tapping"): Promise<void> {
    const { turn, gate } = this.turn;
    await tickAll(this, gate, how);
    if (how === "at once") await this.confirmButton.press("Enter");
    else await this.confirmButton.tap();
    const at = await this.now();
    await this.took({
      type: "answered",
      turn,
      answer: "ready",
      items: gate?.items.map(({ id }) => id) ?? [],
      at,
    });
  }

  /** Measures on screen what this reading says and uses it. */
  async measure(reading: Reading): Promise<void> {
    const { turn } = this.turn;
    const taken = withConditions(reading, this.turn.reading);
    await enterReading(this, reading);
    await this.button(this.text("measure.use")).tap();
    await this.took({ type: "measured", turn, reading: taken as never, at: await this.now() });
  }

  /** Types a code, and takes the model `code` that is found for it. */
  async giveModel(typed: string, code = typed): Promise<void> {
    const { turn } = this.turn;
    await this.findModel(typed);
    await this.button(`${this.text("measure.mine")}: ${code}`).tap();
    await this.took({ type: "model-given", turn, code, typed, at: await this.now() });
  }

  async findModel(typed: string): Promise<void> {
    await this.host.getByRole("textbox", { name: this.text("measure.code-label") }).fill(typed);
    await this.button(this.text("measure.find")).tap();
  }

  async goOnWithoutModel(key: "measure.plate-lost" | "measure.without", typed = ""): Promise<void> {
    const { turn } = this.turn;
    await this.button(this.text(key)).tap();
    await this.took({ type: "model-given", turn, code: null, typed, at: await this.now() });
  }

  async reportDanger(danger: string): Promise<void> {
    await this.button(this.text("ui.danger")).tap();
    // The same danger may be an answer of the opening: those of the bar at the top come first.
    const named = this.button(this.text(`checks.opening.danger.answers.${danger}`));
    await named.first().tap();
    await this.took({ type: "danger-reported", danger, at: await this.now() });
  }

  /** A way in the menu, which asks before it acts. */
  async opensMenu(way: "help" | "ice" | "restart"): Promise<void> {
    await this.button(this.text("ui.menu")).tap();
    await this.button(this.text(`ui.${way}`)).tap();
  }

  /** The row of an earlier answer, by the short name of its turn; a tap on it changes the answer. */
  row(title: string): Locator {
    return this.host.getByRole("button", { name: new RegExp(`^${title} `) }).last();
  }

  async askForHelp(): Promise<void> {
    await this.opensMenu("help");
    await this.button(this.text("ui.help-yes")).tap();
    await this.took({ type: "help-asked", at: await this.now() });
  }

  async reportIce(): Promise<void> {
    await this.opensMenu("ice");
    await this.button(this.text("ui.ice-yes")).tap();
    await this.took({ type: "ice-returned", at: await this.now() });
  }

  async restart(): Promise<void> {
    await this.opensMenu("restart");
    await this.button(this.text("ui.restart-yes")).tap();
    const [left, at] = [leftOf(this.session), await this.now()];
    this.session = freshSession(at);
    this.#greeting.begin();
    this.#held = [];
    if (left) this.session = record(this.session, { type: "prepared-left", left, at }).session;
    await this.#shows("focused");
  }

  /** Changes the answer that was given at this turn, after the panel has said what becomes of later ones. */
  async change(turn: string): Promise<void> {
    const line = linesOf(this.session, this.texts).findLast((each) => each.turn === turn);
    if (!line) throw new Error(`${turn} was never answered`);
    const fold = this.host.getByRole("button", { expanded: false, name: /so far/ });
    if (await fold.count()) await fold.tap();
    await this.row(line.title).tap();
    if (line.drops > 0 || line.words?.[32]) {
      const asked = line.drops > 0 ? this.text("ui.drops", { count: line.drops }) : "";
      await expect(this.host.getByText(asked || this.text("thread.change-ask"))).toBeVisible();
      await this.button(this.text("ui.change-anyway")).tap();
    }
    const { session, held } = changeAnswer(this.session, line.index, await this.now());
    const events = this.session.log.events;
    this.#held = held.map((place) => ({ id: `${place}`, event: events[place] as Held["event"] }));
    this.session = session;
    await this.#shows("focused");
  }

  /**
   * Gives answer after answer, as a householder would whose machine is sound but for `answers`, until an ending or
   * the question for the model code, or as many answers as told. Gates are confirmed.
   */
  async follow(answers: Answers = {}, count = Number.POSITIVE_INFINITY): Promise<void> {
    for (let given = 0; given < count; given++) {
      if (this.turn.kind === "ending" || this.turn.kind === "model") return;
      await this.give(answers[this.turn.turn] ?? soundAnswer(this.session));
    }
  }

  /** Goes on to a turn, or to its ending for `cause`, by a way that reach.ts finds for these answers. */
  async goTo(turn: string, answers: Answers = {}, cause?: string): Promise<void> {
    const { events } = wayTo(this.session, turn, answers, cause);
    for (const event of events.slice(this.session.log.events.length)) {
      if (event.type === "answered") await this.give(event.answer);
      else if (event.type === "measured") await this.give(event.reading as Reading);
      else await this.waitsOut();
    }
    expect(this.turn.turn).toBe(turn);
  }

  /** Answers, confirms or measures, as the turn wants it. */
  async give(answer: string | Reading): Promise<void> {
    if (answer === runsOut) await this.waitsOut();
    else if (typeof answer !== "string") await this.measure(answer);
    else if (this.turn.kind === "gate" && answer === "ready") await this.confirmGate();
    else await this.answer(answer);
  }

  /** Nothing is tapped until the time of a wait has come. */
  async waitsOut(): Promise<void> {
    const until = Date.parse(this.turn.wait?.until ?? "");
    await this.sleep((until - Date.parse(await this.now())) / 3_600_000 + 0.01);
  }

  /** The page is closed and opened again at the very turn; a hazardous one only after all its gates. */
  async reload(): Promise<void> {
    const { turn, kind } = this.turn;
    await this.page.reload();
    await this.#resumed(this.session);
    const [check = "", id = ""] = turn.split(".");
    const gates = flow.checks[check]?.turns[id]?.gates ?? flow.checks[check]?.gates ?? [];
    if (gates[0]) expect(this.turn.turn, "the first gate first").toBe(`${check}.gate-${gates[0]}`);
    if (kind === "gate") return;
    for (const _ of gates) await this.confirmGate();
    expect(this.turn.turn, "the turn that was left").toBe(turnAgain(turn));
    await this.goOnTo(turn);
  }

  /** From where the gates led back to on to the turn that was left: a tap that they had closed is opened in between. */
  async goOnTo(left: string): Promise<void> {
    if (this.turn.turn === left || this.turn.turn !== turnAgain(left)) return;
    await this.answer(openerOf(this.turn.turn, left));
  }

  /** So many hours go by while the page lies open with its timers asleep. */
  async sleep(hours: number): Promise<void> {
    await this.page.clock.fastForward(hours * 3_600_000);
    this.session = settle(this.session, await this.now());
    await this.#shows();
  }

  /** The page is closed, and opened again so many hours later. */
  async comeBackAfter(hours: number, path = "index.html"): Promise<void> {
    await this.page.goto("blank.html");
    await this.page.clock.fastForward(hours * 3_600_000);
    await this.page.goto(path);
    await this.#resumed(this.session);
  }

  /** Notes an act that the panel must have taken, and looks at what it shows now. */
  async took(event: LogEvent): Promise<void> {
    const { session, refusal } = record(settle(this.session, event.at), event);
    expect(refusal, JSON.stringify(event)).toBeNull();
    this.session = putBack(session, this.#held, event.at);
    await this.#shows("focused");
  }

  /** The screen shows the turn whole, fit to be read by everybody, and the log is kept; only axe is not for each act. */
  async seesTurn(): Promise<void> {
    await this.#shows();
    if (this.#axe) expect(await violationsOn(this.page), this.turn.turn).toEqual([]);
  }

  async #shows(focus: "focused" | "" = ""): Promise<void> {
    if (this.#greeting.isShown(this.session)) return seesHello(this);
    const { heading, body, hazards, answers, kind } = this.turn;
    await expect(this.heading).toHaveText(heading);
    if (focus) await expect(this.heading).toBeFocused();
    const { shown, buttons, tooWide, kept } = await this.host.evaluate(readScreen, this.#storeKey);
    for (const text of [...body, ...hazards.map((hazard) => hazard.text)])
      expect(flat(shown)).toContain(flat(text));
    const wanted = answers.filter(({ role }) => kind !== "gate" || role !== "own");
    expect(buttons.map(flat)).toEqual(expect.arrayContaining(wanted.map(({ text }) => flat(text))));
    expect(tooWide, "pixels that the page is too wide").toBeLessThan(1);
    if (this.#keeps) expect(eventsIn(kept)).toEqual(actsOf(this.session.log));
  }

  /** The ending on screen: its outcome in a word, its cause, and whom to call. */
  async seesEnding(outcome: Ending["outcome"], { cause, who }: { cause?: string; who?: string } = {}) {
    expect(this.turn.ending?.outcome, this.turn.turn).toBe(outcome);
    await expect(this.host.getByText(this.text(`part.outcome-${outcome}`), { exact: true })).toBeVisible();
    const words = cause && this.text(`causes.${cause}.${outcome === "fixed" ? "fixed" : "is"}`);
    if (words) await expect(this.host.getByText(words.split(/\.( |$)/)[0] ?? "").first()).toBeVisible();
    if (who) await expect(this.host.getByText(this.text(`who.${who}.name`)).first()).toBeVisible();
    if (this.#axe) expect(await violationsOn(this.page), this.turn.turn).toEqual([]);
  }

  /** A part of this kind that the shop's feed ties to this very code, ready for the basket. */
  async seesPartFor(kind: string, code: string): Promise<void> {
    const offered = this.host.getByRole("heading", { level: 4 }).first();
    await expect(offered).toBeVisible();
    expect(namesOfParts(code, kind)).toContain(await offered.textContent());
    await expect(this.host.getByText(code, { exact: true }).first()).toBeVisible();
    await expect(this.button(this.text("part.add")).first()).toBeVisible();
  }

  /** What the browser keeps of this session, the instants left out. */
  async storedEvents(): Promise<object[]> {
    return eventsIn(await this.storedText());
  }

  storedText(): Promise<string | null> {
    return this.page.evaluate((key) => localStorage.getItem(key), this.#storeKey);
  }

  /** Among the earlier answers in sight stands this reading with its verdict in words. */
  async seesLine(turn: string, verdict: string): Promise<void> {
    const words = this.text(`checks.${turn}.verdicts.${verdict}`);
    await expect(this.host.getByRole("listitem").getByText(words)).toBeVisible();
  }

  async seesNotice(id: string): Promise<void> {
    await expect(this.host.getByText(this.text(`notices.${id}`), { exact: true })).toBeVisible();
  }

  async #resumed(left: Session): Promise<void> {
    this.session = resume(guide, JSON.parse(JSON.stringify(left.log)), await this.now()).session;
    await this.#shows();
  }
}
