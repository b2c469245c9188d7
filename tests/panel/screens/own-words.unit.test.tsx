// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { turnWith, viewOf } from "../gallery/turns.ts";
import { allScreens, mount } from "../mount.tsx";

const label = "Or say it in your own words";
const notSure = "Something else";
const symptom = turnWith({
  turn: "opening.symptom",
  heading: "What is going wrong?",
  answers: [
    { id: "no-ice", text: "No new ice", role: "own" },
    { id: "not-dispensed", text: "None comes out", role: "own" },
    { id: "odd-ice", text: "Odd ice", role: "own" },
    { id: "leaking", text: "Water about", role: "own" },
    { id: "not-sure", text: notSure, role: "not-sure" },
  ],
});
const asked = () => mount(viewOf(symptom));
type Asked = Awaited<ReturnType<typeof asked>>;

const suggested = ({ all }: Asked) => all(".own-words button").map((button) => button.textContent);
const tapSuggestion = ({ all }: Asked, text: string) =>
  all(".own-words button")
    .find((button) => button.textContent === text)
    ?.click();
const said = ({ all }: Asked) => all(".own-words [role=status]").map((status) => status.textContent);

test("nothing is suggested and nothing is said before anything is typed", async () => {
  const panel = await asked();
  expect(suggested(panel)).toEqual([]);
  expect(said(panel)).toEqual([""]);
  expect(panel.buttons().slice(2)).toEqual([
    "No new ice",
    "None comes out",
    "Odd ice",
    "Water about",
    notSure,
  ]);
});

test("what is typed brings up the answers it speaks of, in their own words, and how many is told politely", async () => {
  const panel = await asked();
  await panel.type(label, "It LEAKS");
  expect(suggested(panel)).toEqual(["Water about"]);
  expect(said(panel)).toEqual(["Do you mean this? Tap it if so."]);
  await panel.type(label, "It leaks, and the ice won’t come out");
  expect(suggested(panel).sort()).toEqual(["None comes out", "Water about"]);
  expect(said(panel)).toEqual(["Do you mean one of these 2? Tap it if so."]);
});

test("nothing is chosen by typing: only a tap gives an answer, the same as the list's own button", async () => {
  const panel = await asked();
  await panel.type(label, "It leaks");
  expect(panel.calls).toEqual([]);
  tapSuggestion(panel, "Water about");
  expect(panel.calls).toEqual([["answer", "opening.symptom", "leaking"]]);
});

test("a double tap on a suggestion, or on it and the list, is sent once", async () => {
  const panel = await asked();
  await panel.type(label, "It leaks");
  tapSuggestion(panel, "Water about");
  tapSuggestion(panel, "Water about");
  await panel.tap("No new ice");
  expect(panel.calls).toHaveLength(1);
});

test("what was typed stays while suggestions come and go, also when the panel is drawn again", async () => {
  const panel = await asked();
  for (const typed of ["It leaks", "It leaks not", "Something", ""]) {
    await panel.type(label, typed);
    expect(panel.field(label).value).toBe(typed);
  }
  await panel.type(label, "It leaks");
  await panel.show(viewOf(symptom, { notices: [{ id: "offline", text: "No connection" }] }));
  expect(panel.field(label).value).toBe("It leaks");
  expect(suggested(panel)).toEqual(["Water about"]);
});

test("words that nothing fits lead back to the list and to the answer for whoever is not sure", async () => {
  const panel = await asked();
  await panel.type(label, "My dog barks at it");
  expect(suggested(panel)).toEqual([]);
  expect(said(panel)).toEqual([
    `Nothing fits yet. Say a little more, or pick from the list above. “${notSure}” is an answer too.`,
  ]);
  await panel.type(label, "   ");
  expect(said(panel)).toEqual([""]);
});

test("words of danger are answered by the way to report it, and by no answer that would lead past it", async () => {
  const panel = await asked();
  const warning = "That may be dangerous. If it is, tap “Danger?” at the top.";
  await panel.type(label, "There is a burning smell");
  expect(said(panel)).toEqual([warning]);
  expect(suggested(panel)).toEqual([]);
  expect(panel.buttons()).toContain("Danger?");
  await panel.type(label, "A puddle near the socket");
  expect(said(panel)[0]).toContain(warning);
  expect(suggested(panel)).toEqual(["Water about"]);
});

test("what a person types is shown as text, and of a paste of 100 kB as much stays as is read, and one character more", async () => {
  const panel = await asked();
  const paste = "<b>no ice</b> {{notSure}} $t(ui.title) ".repeat(2500);
  await panel.type(label, paste);
  expect(panel.field(label).value).toBe(paste.slice(0, 1001));
  expect(suggested(panel)).toEqual(["No new ice"]);
  expect(panel.all(".own-words b")).toEqual([]);
});

test("the field says beside it that nothing is sent, and no browser completes what is typed", async () => {
  const panel = await asked();
  expect(panel.told(label)).toBe("This stays on your device. It isn't sent.");
  expect(panel.field(label).getAttribute("autocomplete")).toBe("off");
});

test("no other question has the field, and what was typed before the search has come is searched when it has", async () => {
  const elsewhere = await mount(viewOf({ ...symptom, turn: "opening.bin" }));
  expect(elsewhere.all("input")).toEqual([]);
  const { foundInWords: _, ...soon } = allScreens;
  const early = await mount(viewOf(symptom), { screens: soon });
  await early.type(label, "It leaks");
  expect(suggested(early)).toEqual([]);
  await early.show(viewOf(symptom), { screens: allScreens });
  expect(early.field(label).value).toBe("It leaks");
  expect(suggested(early)).toEqual(["Water about"]);
});

test("American English has it too", async () => {
  const panel = await mount(viewOf(symptom), { locale: "en-US" });
  await panel.type(label, "The ice has a funky odor");
  expect(suggested(panel)).toEqual(["Odd ice"]);
});
