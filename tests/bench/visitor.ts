import type { Locator, Page } from "playwright";
import type { Reading } from "../../src/instruments/index.ts";
import {
  type Guide,
  greetingOf,
  type Held,
  metaOf,
  putBack,
  record,
  type Session,
  startSession,
} from "../../src/session/index.ts";
import { type Texts, type Turn, turnOf } from "../../src/turn/index.ts";
import { type Answers, answerTo } from "../session/drive.ts";
import { soundAnswer } from "../session/reach.ts";

/** How a visitor goes from turn to turn: the screen is tapped, and a session of our own keeps in step with it. */
export type Visitor = {
  turn(): Turn;
  /** Does all that the turn wants, pauses before the last tap, taps, and waits for what comes next. */
  go(pause?: () => Promise<void>): Promise<void>;
};

/**
 * A visitor who answers by a table of turn ids, as tests/session/drive.ts has it; all else is as on a sound machine,
 * and gates are confirmed. Keeping a session of our own beside the screen's means that an edited flow, and with it
 * another order of checks, changes no line here.
 */
export function createVisitor(
  page: Page,
  guide: Guide,
  texts: Texts,
  answers: Answers,
  model: string,
): Visitor {
  const now = () => new Date().toISOString().replace(/\.\d+Z/, "+00:00");
  let session: Session = startSession(guide, now());
  let held: Held[] = [];
  const given = () => answers[metaOf(session).turn] ?? soundAnswer(session);
  const tap = createHand(page);
  const named = (name: string) => page.getByRole("button", { name, exact: true }).first();

  function event() {
    const { turn, kind } = metaOf(session);
    if (kind === "model") return { type: "model-given" as const, turn, code: model, typed: model, at: now() };
    return answerTo(session, given(), now());
  }

  async function prepare(): Promise<Locator> {
    const { kind, gate, answers: offered } = turnOf(session, texts, now());
    const answer = given();
    if (kind === "gate" && !gate?.short && answer === "ready") {
      for (const box of await page.getByRole("checkbox").all()) await tap(box);
      return named(texts("measure.gate-confirm"));
    }
    if (kind === "model") {
      await page.getByRole("textbox").first().fill(model);
      await tap(named(texts("measure.find")));
      return page.getByRole("button", { name: texts("measure.mine") }).first();
    }
    if (typeof answer !== "string") return enter(page, texts, answer, tap);
    return named(offered.find(({ id }) => id === answer)?.text ?? "");
  }

  /** What greets is answered before the chart's first turn, and kept until its own comes up. */
  async function greet(greeting: Session): Promise<Locator> {
    const { turn, answers: offered } = turnOf(greeting, texts, now());
    const answer = String(answers[turn] ?? soundAnswer(greeting));
    held = [{ id: "told", event: { type: "answered", turn, answer, at: now() } }];
    return named(offered.find(({ id }) => id === answer)?.text ?? "");
  }

  return {
    turn: () => turnOf(session, texts, now()),
    go: async (pause) => {
      const greeting = held.length ? null : greetingOf(session);
      const last = greeting ? await greet(greeting) : await prepare();
      await pause?.();
      const { session: led, refusal } = greeting ? { session, refusal: null } : record(session, event());
      const next = putBack(led, held, now());
      if (refusal) throw new Error(`${metaOf(session).turn}: ${refusal}`);
      // Nobody looks for anything in the page while it works on the tap: that would count as its own time.
      await page.evaluate(
        "void (globalThis.fridgesideBench && (fridgesideBench.drawn = new Promise((drawn) => (fridgesideBench.next = drawn))))",
      );
      await tap(last);
      await page.evaluate("globalThis.fridgesideBench?.drawn");
      session = next;
      await page.getByRole("heading", { level: 2, name: turnOf(next, texts, now()).heading }).waitFor();
    },
  };
}

/** Half a second lies between two taps that are both meant (common practice, no source); the panel takes faster ones for one. */
const BETWEEN_TAPS_MS = 500;

type Tap = (target: Locator) => Promise<void>;

/** Taps no faster than a person who means each tap. The pause comes before the tap, so what is timed from it leaves it out. */
function createHand(page: Page): Tap {
  let last = Number.NEGATIVE_INFINITY;
  return async (target) => {
    const early = last + BETWEEN_TAPS_MS - performance.now();
    if (early > 0) await page.waitForTimeout(early);
    await target.tap();
    last = performance.now();
  };
}

/** Enters a reading as a hand would, up to the tap that uses it. */
async function enter(page: Page, texts: Texts, reading: Reading, hand: Tap): Promise<Locator> {
  const tap = (key: string) => hand(page.getByRole("button", { name: texts(key), exact: true }).first());
  const field = page.getByRole("textbox").first();
  if (reading.kind === "flow") {
    const [run] = reading.runs;
    await tap("measure.start");
    // The stopwatch stops by itself when its seconds are over, and waits there.
    await page.getByRole("button", { name: texts("measure.go-on") }).waitFor({ timeout: 30_000 });
    await tap("measure.go-on");
    if (run?.unit === "g") await hand(page.getByText(texts("measure.unit-g"), { exact: true }).first());
    await field.fill(`${run?.volume}`);
  } else if (reading.kind === "temperature") {
    await hand(page.getByText(texts(`measure.with-${reading.with}-freezer`), { exact: true }));
    await hand(page.getByText(texts(`measure.unit-${reading.unit}`), { exact: true }).first());
    await field.fill(`${reading.value}`);
  } else if (reading.kind === "supply" && reading.by === "fill") {
    await field.fill(`${reading.volume}`);
    await page.getByRole("textbox").nth(1).fill(`${reading.seconds}`);
  } else if (reading.kind === "filter-age" && "month" in reading.fitted) {
    const [year = "", month = ""] = reading.fitted.month.split("-");
    await hand(page.getByText(texts(`measure.by-${reading.fitted.by}`), { exact: true }));
    await page.getByRole("combobox").selectOption(`${Number(month)}`);
    await field.fill(year);
  } else throw new Error(`The visitor has no ${reading.kind} of this kind to show`);
  await tap(reading.kind === "filter-age" ? "measure.show-age" : "measure.show-result");
  return page.getByRole("button", { name: texts("measure.use"), exact: true });
}
