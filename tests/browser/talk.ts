import type { Locator } from "@playwright/test";
import type { Held } from "../../src/session/index.ts";
import { phrasesOf, withOwnLines } from "../../src/training/index.ts";
import { readLocales, readPhrases } from "../../src/workbench/build/locales-folder.ts";
import { greets } from "./greeting.ts";
import type { PanelPage } from "./panel-page.ts";
import { expect } from "./panel-test.ts";

/** The field at the panel's end. */
export const fieldOf = (panel: PanelPage) =>
  panel.host.getByRole("textbox", { name: panel.text("composer.label"), exact: true });

/** What was said to the last sentence. */
export const heardBy = (panel: PanelPage) => panel.host.locator(".heard");

export async function say(panel: PanelPage, words: string): Promise<void> {
  await fieldOf(panel).fill(words);
  await fieldOf(panel).press("Enter");
}

const { "en-GB": british = {}, "en-US": american = {} } = readPhrases();
const said = phrasesOf({ ...readLocales()["en-GB"], phrases: withOwnLines(british, american) });

/** Says an answer in words that somebody else has used for it, and confirms it; what was told besides is not meant. */
export async function sayAnswer(panel: PanelPage, answer: string): Promise<void> {
  const { turn, answers } = panel.turn;
  const words = await utter(panel, turn, answer, answers.find(({ id }) => id === answer)?.text ?? "");
  await panel.took({ type: "answered", turn, answer, ...words, at: await panel.now() });
  await saysNoMore(panel);
  if (words.words) await expect(lastLine(panel).locator("bdi")).toHaveText(words.words);
}

/** Says a complaint to the turn that greets, in words that somebody else has used for it. */
export async function sayComplaint(panel: PanelPage, complaint = "no-ice"): Promise<Held> {
  const words = await utter(panel, greets, complaint, panel.text(`checks.${greets}.answers.${complaint}`));
  await expect(panel.heading).toHaveText(panel.text("checks.opening.danger.ask"));
  const at = await panel.now();
  return { id: "told", event: { type: "answered", turn: greets, answer: complaint, ...words, at } };
}

/** What was told besides an answer is not meant. */
export async function saysNoMore(panel: PanelPage): Promise<void> {
  const other = heardBy(panel).getByRole("button", { name: panel.text("composer.no"), exact: true });
  if (await other.isVisible()) await other.tap();
}

/** The last of the earlier answers. */
export const lastLine = (panel: PanelPage) => panel.host.locator("ol[role=list] > li").last();

/** @returns the words that were taken as the answer; none where they were the answer's own */
async function utter(
  panel: PanelPage,
  turn: string,
  answer: string,
  text: string,
): Promise<{ words?: string }> {
  let words = said.find((phrase) => phrase.label === `answer ${turn}.${answer}`)?.text ?? text;
  const heading = await panel.heading.textContent();
  await say(panel, words);
  const offered = heardBy(panel).getByRole("button", { name: text, exact: true });
  const isHeard = async () => (await panel.heading.textContent()) !== heading || (await offered.isVisible());
  await expect(async () => {
    expect((await isHeard()) || (await heardBy(panel).isVisible())).toBe(true);
  }).toPass();
  // Whoever is not understood says it as the answer has it.
  if (!(await isHeard())) {
    words = text;
    await say(panel, text);
  }
  await expect(async () => expect(await isHeard(), `"${words}" at ${turn}`).toBe(true)).toPass();
  if (!(await offered.isVisible())) return {};
  await offered.tap();
  return { words };
}

/** From here on whatever is tapped is reached and pressed by keys. */
export function useKeysAlone(panel: PanelPage): () => void {
  const hand = Object.getPrototypeOf(panel.host) as Locator;
  const { tap } = hand;
  hand.tap = async function press(this: Locator) {
    const isBox = await this.evaluate((element) =>
      Boolean(element.matches("label, [type=checkbox], [type=radio]")),
    );
    const target = isBox
      ? await this.evaluateHandle((element) => (element as HTMLLabelElement).control ?? element)
      : null;
    await (target?.asElement() ?? this).press(isBox ? "Space" : "Enter");
  };
  return () => {
    hand.tap = tap;
  };
}
