// @vitest-environment happy-dom
import { act } from "preact/test-utils";
import { afterEach, describe, expect, test } from "vitest";
import type { Live, LiveRoom, Suggested } from "../../src/turn/index.ts";
import { quietAnswers, turnWith, viewOf } from "./gallery/turns.ts";
import { mount } from "./mount.tsx";

const question = viewOf(
  turnWith({
    turn: "ice-bin.look",
    heading: "What do you see?",
    answers: [{ id: "fine", text: "Loose cubes", role: "own" }, ...quietAnswers],
  }),
  { ways: ["danger", "ice", "help"] },
);

const blank: LiveRoom = {
  ...{ is: "open", isUp: true, code: null, asking: [], inside: [], left: "", isPaused: false, isFull: false },
  ...{ lines: [], open: [] },
};
const ash = [{ id: "a1", name: "Ash" }];

/** A panel whose page has a relay; `becomes` has the room be as a test says. */
async function open(first: Partial<LiveRoom> | null = null) {
  let room = first && { ...blank, ...first };
  const watchers = new Set<() => void>();
  const did: unknown[][] = [];
  const note =
    (name: string) =>
    (...given: unknown[]) =>
      void did.push([name, ...given]);
  const live: Live = {
    isOffered: () => !room,
    room: () => room,
    watch: (changed) => {
      watchers.add(changed);
      return () => watchers.delete(changed);
    },
    ask: note("ask"),
    letIn: note("letIn"),
    turnAway: note("turnAway"),
    pause: note("pause"),
    newCode: note("newCode"),
    end: note("end"),
    bringHere: note("bringHere"),
    write: (text) => did.push(["write", text]) > 0,
    answer: note("answer"),
    lookNext: note("lookNext"),
  };
  const panel = await mount(question, { services: { live } });
  await panel.settle();
  const becomes = async (next: Partial<LiveRoom>) => {
    await act(() => {
      room = { ...blank, ...next };
      for (const watcher of watchers) watcher();
    });
    await panel.settle();
  };
  const suggests = (suggested: Suggested) =>
    becomes({ inside: ash, open: [{ id: 7, name: "Ash", suggested }] });
  return { ...panel, did, becomes, suggests };
}

afterEach(() => document.body.replaceChildren());

describe("live help on the screen", () => {
  test("is asked for in the menu", async () => {
    const { tap, did } = await open();
    await tap("More");
    await tap("Get a person to help");
    expect(did).toEqual([["ask", "menu"]]);
  });

  test("shows a code in two groups, with its letters as people spell them on the phone", async () => {
    const { text, all } = await open({ code: { text: "J971-4TD6", until: Date.now() + 300_000 } });
    expect(all(".live-code b").map(({ textContent }) => textContent)).toEqual(["J971", "4TD6"]);
    expect(all(".spelled li").map(({ textContent }) => textContent)).toEqual([
      "J Juliett",
      "9 nine",
      "7 seven",
      "1 one",
      "4 four",
      "T Tango",
      "D Delta",
      "6 six",
    ]);
    expect(text()).toContain("It works for 5 more minutes.");
  });

  test("says a code has run out, and makes another", async () => {
    const { text, tap, did } = await open({ code: { text: "J971-4TD6", until: Date.now() - 1 } });
    expect(text()).toContain("This code has run out.");
    await tap("New code");
    expect(did).toEqual([["newCode"]]);
  });

  test("names who wants to join and what they will see, before they see it", async () => {
    const { text, tap, did } = await open({ asking: ash });
    expect(text()).toContain("Ash wants to join");
    expect(text()).toContain("They won't see the rest of this page.");
    await tap("Let Ash in");
    await tap("No");
    expect(did).toEqual([
      ["letIn", "a1"],
      ["turnAway", "a1"],
    ]);
  });

  test("has pause and end at hand while somebody is in", async () => {
    const { text, tap, did, becomes } = await open({ inside: ash });
    expect(text()).toContain("Ash sees your search");
    await tap("Pause");
    await becomes({ inside: ash, isPaused: true });
    expect(text()).toContain("Paused. Ash won't see anything new.");
    await tap("Go on");
    await tap("End");
    expect(did).toEqual([["pause", true], ["pause", false], ["end"]]);
  });

  test("shows what was said last, and sends what is typed", async () => {
    const { text, tap, did, root, all } = await open({
      inside: ash,
      lines: [{ id: "4", name: "Ash", text: "Hello" }],
    });
    expect(text()).toContain("Ash Hello");
    await tap("Write to Ash");
    const [field] = all<HTMLInputElement>(".write input");
    await act(() => {
      if (field) field.value = "They are loose";
      field?.dispatchEvent(new Event("input", { bubbles: true }));
    });
    await act(() => (root.querySelector(".write") as HTMLFormElement).requestSubmit());
    expect(did).toEqual([["write", "They are loose"]]);
  });

  test.each<[string, Partial<LiveRoom>]>([
    ["Nobody is here", {}],
    ["Ash has left", { left: "Ash" }],
    ["No connection.", { inside: ash, isUp: false }],
    ["new answers aren't shown any more", { inside: ash, isFull: true }],
    ["Your live help is open in another tab", { is: "elsewhere" }],
    ["The live help has ended", { is: "ended" }],
    ["We can't take you right now", { is: "unable" }],
    ["That code has run out", { is: "unused" }],
    ["Getting you a code", { is: "coming" }],
  ])("says '%s'", async (said, room) => {
    expect((await open(room)).text()).toContain(said);
  });
});

describe("a suggestion on the screen", () => {
  test("rings the answer that somebody points at, until they no longer do", async () => {
    const { suggests, becomes, button } = await open({ inside: ash });
    await suggests({ kind: "point", turn: "ice-bin.look", answer: "fine" });
    expect(button("Loose cubes").getAttribute("data-pointed")).toBe("Ash points at this");
    await becomes({ inside: ash });
    expect(button("Loose cubes").hasAttribute("data-pointed")).toBe(false);
  });

  test("is an answer that one tap gives as the householder's own", async () => {
    const { suggests, all, calls, did, text } = await open({ inside: ash });
    await suggests({ kind: "propose", turn: "ice-bin.look", answer: "fine", why: "You said so." });
    expect(text()).toContain("Ash suggests this answer: You said so.");
    expect(calls).toEqual([]);
    await act(() => all(".suggested .own")[0]?.click());
    expect(calls).toEqual([["answer", "ice-bin.look", "fine"]]);
    expect(did).toEqual([["answer", 7, "taken"]]);
  });

  test("is declined with a tap, and does nothing then", async () => {
    const { suggests, tap, calls, did } = await open({ inside: ash });
    await suggests({ kind: "propose", ending: "fixed", why: "" });
    await tap("No thanks");
    expect(calls).toEqual([]);
    expect(did).toEqual([["answer", 7, "declined"]]);
  });

  test("is a model number only if the shop has it; else it is past", async () => {
    const { suggests, did, text, settle } = await open({ inside: ash });
    await suggests({ kind: "correct", model: "WX-40B8/E", why: "" });
    await settle();
    expect(text()).not.toContain("WX-40B8/E");
    expect(did).toEqual([["answer", 7, "past"]]);
  });
});
