// @vitest-environment happy-dom
import { virtual } from "@guidepup/virtual-screen-reader";
import { afterEach, describe, expect, test } from "vitest";
import type { View, Words } from "../../src/turn/index.ts";
import { endingFixtures } from "./gallery/ending-fixtures.ts";
import { gateTurn } from "./gallery/measure-fixtures.ts";
import { servicesFor } from "./gallery/services.ts";
import { linesOf, quietAnswers, turnWith, viewOf } from "./gallery/turns.ts";
import { mount } from "./mount.tsx";

/*
 * What somebody hears who reads with their ears, by a virtual screen reader (@guidepup/virtual-screen-reader, after
 * CORE-AAM 1.2 and HTML-AAM 1.0). The transcripts were written by hand, in the order in which a person needs it said.
 */

const question = turnWith({
  turn: "ice-bin.look",
  heading: "What do you see at the ice bin?",
  body: ["Open the freezer.", "Look into the bin."],
  note: "Leave the bin where it is.",
  hazards: [{ id: "tray", signal: "caution", text: "Keep your hands out." }],
  means: "That leaves the bin or the switch.",
  answers: [{ id: "fine", text: "Loose cubes", role: "own" }, ...quietAnswers],
});

const steps = 200;

/** All that is said from the panel's beginning to its end, but for where a paragraph, a list or an item begins and ends. */
async function heardIn(root: HTMLElement): Promise<string[]> {
  await virtual.start({ container: root });
  for (let step = 0; step < steps; step++) {
    await virtual.next();
    if ((await virtual.lastSpokenPhrase()).startsWith("end of region")) break;
  }
  const phrases = await virtual.spokenPhraseLog();
  return phrases.filter((one) => !/^(end\b|paragraph|list$|listitem|group|not busy|status$)/.test(one));
}

afterEach(() => virtual.stop());

describe("A turn as it is heard", () => {
  test("begins with the ways out and what was said, then asks, warns, tells the steps, and offers the answers", async () => {
    const { root } = await mount(viewOf(question, { lines: linesOf(1) }));
    expect(await heardIn(root)).toEqual([
      "region, Ice maker help",
      "Ice maker help",
      "button, Danger?, not expanded",
      "button, More, not expanded",
      "button, Is anything dangerous right now? No, nothing, Change",
      "Is anything dangerous right now?",
      "No, nothing",
      "That leaves the bin or the switch.",
      "heading, What do you see at the ice bin?, level 2",
      "CAUTION",
      "Keep your hands out.",
      "Open the freezer.",
      "Look into the bin.",
      "Leave the bin where it is.",
      "button, Loose cubes, not disabled",
      "button, I'm not sure, not disabled",
      "button, I can't do this, not disabled",
      "form",
      "textbox, Say it, or ask us, placeholder Say it, or ask us",
      "button, Send, disabled",
    ]);
  });

  test("says at a gate what can happen before what has to be done, and each line with whether it is ticked", async () => {
    const { root } = await mount(viewOf(gateTurn));
    const heard = await heardIn(root);
    expect(heard.slice(heard.indexOf("heading, Before you open the back, level 2"))).toEqual([
      "heading, Before you open the back, level 2",
      "Do every line, then tick it. You are asked again each time.",
      "DANGER",
      "A tall fridge can tip over. Move it with two people.",
      "checkbox, The plug is out, and I can see it, not checked",
      "The plug is out, and I can see it",
      "checkbox, The stop tap is closed, not checked",
      "The stop tap is closed",
      "checkbox, The floor is dry, not checked",
      "The floor is dry",
      "Then: The gated check",
      "Food keeps cold for 4 hours in the fridge while its door stays shut.",
      "button, I have done all of this, not disabled",
      "button, I can't do this, not disabled",
      "form",
      "textbox, Say it, or ask us, placeholder Say it, or ask us",
      "button, Send, disabled",
    ]);
  });

  test("says at an ending how it ended, then the cause, the evidence and whom to call", async () => {
    const { root } = await mount(endingFixtures["professional"] as View);
    const heard = await heardIn(root);
    const places = [
      "A job for a professional",
      "heading, This one needs a repairer, level 2",
      "Water in ten seconds: 10.2 ml a second, give or take 0.7",
      "Ruled out: the small tap and the door.",
      "heading, Who to call, level 3",
      "link, Ask the people at Winterhof Parts",
      "heading, What you found, level 3",
      "button, Copy this summary",
      "textbox, Say it, or ask us, placeholder Say it, or ask us",
    ].map((each) => heard.indexOf(each));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
  });
});

test("what is said to a typed sentence is heard at once, with its choices next", async () => {
  const words: Words = {
    understand: () => [{ kind: "answer", turn: question.turn, answer: "fine", sure: false }],
    codesIn: () => [],
    said: () => null,
    aside: () => null,
  };
  const services = { ...servicesFor(""), words: async () => words };
  const { root, all, settle } = await mount(viewOf(question), { services });
  const [field] = all<HTMLInputElement>(".say input");
  if (field) field.value = "loose ones";
  field?.dispatchEvent(new Event("input", { bubbles: true }));
  await settle();
  await virtual.start({ container: root });
  field?.form?.requestSubmit();
  await settle();
  for (let step = 0; step < 4; step++) await virtual.next();
  expect((await virtual.spokenPhraseLog()).filter((one) => !/^(end\b|paragraph)/.test(one))).toEqual([
    "region, Ice maker help",
    "Do you mean this?",
    "button, Loose cubes, not disabled",
    "button, None of these",
  ]);
});
