import { expect } from "@playwright/test";
import { greetingOf, type Held, metaOf, putBack, record, type Session } from "../../src/session/index.ts";
import { flow } from "./expected.ts";
import type { PanelPage } from "./panel-page.ts";

export const greets = `opening.${flow.opening.greets}`;
const first = `opening.${flow.opening.start}`;

/** The turn that greets is on screen. */
export const seesHello = (panel: PanelPage) => expect(panel.heading).toHaveText(panel.text("thread.hello"));

/** Answers the turn that greets, on a page that shows it; danger is asked about next. */
export async function says(panel: PanelPage, complaint = "no-ice"): Promise<Held> {
  const own = panel.texts(`checks.${greets}.answers.${complaint}`);
  await panel.button(own || panel.text(`standing.${complaint}`)).tap();
  await expect(panel.heading).toHaveText(panel.text(`checks.${first}.ask`));
  return {
    id: "told",
    event: { type: "answered", turn: greets, answer: complaint, at: await panel.now() },
  };
}

/**
 * The turn that greets is answered before the question about danger, and kept until its turn comes up. Tests may answer in
 * the chart's order: what they answer to the questions about danger is tapped once they name a complaint, or have stopped.
 */
export class Greeting {
  /** Answers that are tapped after the complaint's. */
  #ahead: string[] = [];
  #isSaid = false;

  /** Whether it stands on screen. */
  isShown(session: Session): boolean {
    return this.#ahead.length > 0 || (!this.#isSaid && greetingOf(session) !== null);
  }

  /** A session begins. */
  begin(isSaid = false): void {
    this.#ahead = [];
    this.#isSaid = isSaid;
  }

  /** Takes an answer; what it comes to on screen, or null where that waits for the complaint. */
  async answer(
    panel: PanelPage,
    answer: string,
    fresh: Session,
  ): Promise<{ session: Session; held: Held[] } | null> {
    const { turn } = metaOf(panel.session);
    const at = await panel.now();
    const { session, refusal } = record(panel.session, { type: "answered", turn, answer, at });
    if (refusal) throw new Error(`${turn} has no answer "${answer}"`);
    if (turn !== greets) this.#ahead.push(answer);
    if (turn !== greets && metaOf(session).kind !== "ending") {
      panel.session = session;
      return null;
    }
    const held = [await says(panel, turn === greets ? answer : "no-ice")];
    let next = fresh;
    for (const id of this.#ahead.splice(0)) {
      const { turn } = metaOf(next);
      await expect(panel.heading).toHaveText(panel.text(`checks.${turn}.ask`));
      await panel.button(panel.texts(`checks.${turn}.answers.${id}`) || panel.text(`standing.${id}`)).tap();
      const at = await panel.now();
      next = putBack(record(next, { type: "answered", turn, answer: id, at }).session, held, at);
    }
    return { session: next, held };
  }
}
