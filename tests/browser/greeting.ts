import { expect } from "@playwright/test";
import { type Held, metaOf, putBack, record, type Session } from "../../src/session/index.ts";
import { flow } from "./expected.ts";
import type { PanelPage } from "./panel-page.ts";

const greets = `opening.${flow.opening.greets}`;

/**
 * The turn that greets is answered before the question about danger, and kept until its turn comes up. Tests answer in the
 * chart's order: what they answer to the question about danger is tapped once they have named a complaint, or have stopped.
 */
export class Greeting {
  /** Answers that are tapped after the complaint's. */
  #ahead: string[] = [];

  /** Whether it stands on screen. */
  isShown(session: Session): boolean {
    return (
      this.#ahead.length > 0 ||
      !session.log.events.some((event) => "turn" in event || event.type === "danger-reported")
    );
  }

  async seen(panel: PanelPage): Promise<void> {
    await expect(panel.heading).toHaveText(panel.text("thread.hello"));
  }

  /** Takes an answer; what it comes to on screen, or null where that waits for the complaint. */
  async answer(
    panel: PanelPage,
    answer: string,
    fresh: Session,
  ): Promise<{ session: Session; held: Held[] } | null> {
    const at = await panel.now();
    const { turn } = metaOf(panel.session);
    const { session, refusal } = record(panel.session, { type: "answered", turn, answer, at });
    if (refusal) throw new Error(`${turn} has no answer "${answer}"`);
    const isStop = metaOf(session).kind === "ending";
    if (turn !== greets) this.#ahead.push(answer);
    if (turn !== greets && !isStop) {
      panel.session = session;
      return null;
    }
    const complaint = turn === greets ? answer : "no-ice";
    await panel.button(panel.text(`checks.${greets}.answers.${complaint}`)).tap();
    await expect(panel.heading).not.toHaveText(panel.text("thread.hello"));
    const held: Held[] = [{ id: "told", event: { type: "answered", turn: greets, answer: complaint, at } }];
    let next = fresh;
    for (const id of this.#ahead.splice(0)) {
      const { turn } = metaOf(next);
      await expect(panel.heading).toHaveText(panel.text(`checks.${turn}.ask`));
      await panel.button(panel.texts(`checks.${turn}.answers.${id}`) || panel.text(`standing.${id}`)).tap();
      const given = record(next, { type: "answered", turn, answer: id, at: await panel.now() }).session;
      next = putBack(given, held, await panel.now());
    }
    return { session: next, held };
  }
}
