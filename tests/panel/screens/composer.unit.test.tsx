// @vitest-environment happy-dom
import { describe, expect, test, vi } from "vitest";
import type { Turn, TypedContext, View, Words } from "../../../src/turn/index.ts";
import { createDraftOf } from "../gallery/draft.ts";
import { endingFixtures } from "../gallery/ending-fixtures.ts";
import { flowTurn, gateTurn, modelTurn } from "../gallery/measure-fixtures.ts";
import { servicesFor } from "../gallery/services.ts";
import { turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

type Understood = ReturnType<Words["understand"]>;

const symptom = turnWith({
  turn: "opening.symptom",
  heading: "What is going wrong?",
  answers: [
    { id: "no-ice", text: "No new ice", role: "own" },
    { id: "odd-ice", text: "Odd ice", role: "own" },
  ],
});
const hum = { turn: "dispense-listen.listen", answer: "hums" };

/** A panel whose sentences are all understood as `meant`; `heard` has what they were understood by. */
async function panelAt(turn: typeof symptom, meant: Understood, more: object = {}) {
  const heard: [sentence: string, context: TypedContext][] = [];
  const words: Words = {
    understand: (...given) => {
      heard.push(given);
      return meant;
    },
    codesIn: (sentence) => sentence.match(/\S*\d\S*/g) ?? [],
    said: ({ answer }) => (answer === "hums" ? { title: "Dispenser", answer: "It hums" } : null),
    aside: (entry, { part, price } = {}) =>
      entry === "where-filter"
        ? { text: "Look at the top right.", drawing: "filter-places" }
        : { text: `${part} costs ${price} here.`, drawing: null },
  };
  const services = { words: async () => words, draft: createDraftOf(), ...more };
  const panel = await mount(viewOf(turn), { services });
  const field = () => panel.all<HTMLInputElement>(".composer .say input")[0] as HTMLInputElement;
  const say = async (sentence: string) => {
    field().value = sentence;
    field().dispatchEvent(new Event("input", { bubbles: true }));
    await panel.settle();
    field().form?.requestSubmit();
    await panel.settle();
  };
  const offered = () => panel.all(".heard button").map(({ textContent }) => textContent);
  const said = () => panel.all(".heard .ask > p")[0]?.textContent;
  return { ...panel, say, offered, said, field, heard, services };
}

const answer = (id: string, sure = false) =>
  ({ kind: "answer", turn: "opening.symptom", answer: id, sure }) as const;

describe("What is typed at a turn", () => {
  test("is taken at once where it is an answer's own wording", async () => {
    const { say, calls, offered } = await panelAt(symptom, [answer("no-ice", true)]);
    await say("no new ice");
    expect(calls).toEqual([["answer", "opening.symptom", "no-ice"]]);
    expect(offered()).toEqual([]);
  });

  test("is else only offered, as the answers' own buttons", async () => {
    const { say, calls, offered, said, all } = await panelAt(symptom, [answer("odd-ice"), answer("no-ice")]);
    await say("it tastes of garlic");
    expect(all(".sent")[0]?.textContent).toBe("it tastes of garlic");
    expect(said()).toBe("Do you mean one of these?");
    expect(offered()).toEqual(["Odd ice", "No new ice", "None of these"]);
    expect(calls).toEqual([]);
    all(".heard button")[0]?.click();
    expect(calls).toEqual([["answer", "opening.symptom", "odd-ice", "it tastes of garlic"]]);
  });

  test("offers a danger before all else, and that is reported at once", async () => {
    const { say, calls, offered, all } = await panelAt(symptom, [
      { kind: "danger", danger: "shock", sure: false },
      answer("no-ice"),
    ]);
    await say("no ice and the plug sparks");
    const [first = "", last] = offered();
    expect(first).toBe("I felt a shock or a tingle");
    expect(last).toBe("No, nothing dangerous");
    all(".heard button")[0]?.click();
    expect(calls).toEqual([["reportDanger", "shock"]]);
  });

  test("offers a danger while the shop's list of parts is still on its way", async () => {
    const never = () => new Promise<never>(() => {});
    const { say, offered } = await panelAt(symptom, [{ kind: "danger", danger: "shock", sure: true }], {
      findModel: never,
      partFor: never,
    });
    await say("got a shock off my wx40b8e");
    expect(offered()).toEqual(["I felt a shock or a tingle", "No, nothing dangerous"]);
  });

  test("means something else where it meant no danger", async () => {
    const { say, tap, offered } = await panelAt(symptom, [
      { kind: "danger", danger: "shock", sure: false },
      answer("no-ice"),
    ]);
    await say("no ice, but sparkling water");
    await tap("No, nothing dangerous");
    expect(offered()).toEqual(["No new ice", "None of these"]);
  });

  test("answers a question in place and leaves the turn open", async () => {
    const { say, said, tap, offered, calls, all } = await panelAt(symptom, [
      { kind: "question", entry: "where-filter" },
    ]);
    await say("where is the filter");
    expect(said()).toBe("Look at the top right.");
    expect(all(".heard img").map((img) => img.getAttribute("alt"))).toEqual(["filter-places"]);
    await tap("OK");
    expect(offered()).toEqual([]);
    expect(calls).toEqual([]);
  });

  test("is told once it was confirmed, where it is about something else", async () => {
    const { say, tap, calls, all } = await panelAt(symptom, [{ kind: "facts", facts: [hum] }]);
    await say("and it hums");
    expect(all(".heard li").map(({ textContent }) => textContent)).toEqual(["Dispenser: It hums"]);
    await tap("Yes, that's right");
    expect(calls).toEqual([["tell", { words: "and it hums", facts: [hum] }]]);
  });

  test("with an answer and something else is asked about in turn", async () => {
    const { say, all, show, offered, tap, calls } = await panelAt(symptom, [
      answer("no-ice"),
      { kind: "facts", facts: [hum] },
    ]);
    await say("no ice, and it hums");
    all(".heard button")[0]?.click();
    await show(viewOf(turnWith({ turn: "ice-bin.look" })));
    expect(offered()).toEqual(["Yes, that's right", "No, I didn't mean that"]);
    await tap("Yes, that's right");
    expect(calls.at(-1)).toEqual(["tell", { words: "no ice, and it hums", facts: [hum] }]);
  });

  test("with something else that its next question has asked by then is not asked about again", async () => {
    const { say, all, show, offered } = await panelAt(symptom, [
      answer("no-ice"),
      { kind: "facts", facts: [hum] },
    ]);
    await say("no ice, and it hums");
    all(".heard button")[0]?.click();
    const line = {
      index: 1,
      turn: hum.turn,
      title: "Dispenser",
      answer: "Nothing",
      drops: 0,
      canChange: true,
    };
    await show(viewOf(turnWith({ turn: "ice-bin.look" }), { lines: [line] }));
    expect(offered()).toEqual([]);
  });

  test("that nobody understands is said to be, and kept for whoever takes over", async () => {
    const { say, said, calls, field } = await panelAt(symptom, [{ kind: "nothing" }]);
    await say("my cousin fitted it");
    expect(said()).toMatch(/^We don't follow that yet/);
    expect(calls).toEqual([["tell", { words: "my cousin fitted it", facts: [] }]]);
    expect(field().value).toBe("");
  });

  test("stays in the field where what understands it does not come", async () => {
    const words = () => Promise.reject(new Error("offline"));
    const { say, field, text } = await panelAt(symptom, [], { words });
    await say("there is no ice");
    expect(field().value).toBe("there is no ice");
    expect(text()).toContain("Your words are still here");
  });

  test("is there after a reload, until it was sent", async () => {
    const draft = createDraftOf();
    const { field, say } = await panelAt(symptom, [answer("no-ice")], { draft });
    field().value = "no ic";
    field().dispatchEvent(new Event("input", { bubbles: true }));
    expect((await panelAt(symptom, [], { draft })).field().value).toBe("no ic");
    await say("no ice");
    expect((await panelAt(symptom, [], { draft })).field().value).toBe("");
  });

  test("is forgotten with the turn that it was said to", async () => {
    const { say, show, offered } = await panelAt(symptom, [answer("no-ice")]);
    await say("no ice");
    await show(viewOf(turnWith({ turn: "ice-bin.look" })));
    expect(offered()).toEqual([]);
  });
});

test("no sentence passes a gate: 'ready' is none of the answers that it may mean", async () => {
  const answers = [{ id: "ready", text: "All done", role: "own" as const }, ...gateTurn.answers];
  const { say, heard } = await panelAt({ ...gateTurn, answers }, [{ kind: "nothing" }]);
  await say("yes all done, go on");
  const [, context] = heard[0] ?? [];
  expect(context?.answers.map(({ id }) => id)).toEqual(gateTurn.answers.map(({ id }) => id));
});

test("a reading fills in its instrument, and is sent by hand alone", async () => {
  const { say, field, calls, all, tap } = await panelAt(flowTurn, [
    { kind: "reading", instrument: "flow", entries: { volume: "150", unit: "ml", seconds: "10" } },
  ]);
  await say("150 ml in 10 seconds");
  const [volume] = all<HTMLInputElement>(".turn input[type=text]");
  expect(volume?.value).toBe("150");
  expect(field().value).toBe("");
  expect(calls).toEqual([]);
  await tap("OK");
});

test("what a part costs is told by the shop's own price, where an ending names the part", async () => {
  const { turn } = endingFixtures["part"] as View;
  const meant: Understood = [{ kind: "question", entry: "cost-part" }];
  const { say, said } = await panelAt(turn as Turn, meant, { partFor: servicesFor("part").partFor });
  await say("what does it cost?");
  expect(said()).toBe("Water filter cartridge, quarter turn, with seal ring costs £34.90 here.");
});

describe("A model number in a sentence", () => {
  const meant: Understood = [{ kind: "model", code: "WX-40B8/E" }];
  const findModel = vi.fn(servicesFor("model-exact").findModel);

  test("is looked up, asked about and given where it is asked for", async () => {
    const { say, tap, calls, heard } = await panelAt(modelTurn, meant, { findModel });
    await say("it's a wx40b8e");
    expect(findModel).toHaveBeenCalledWith("wx40b8e");
    expect(heard.at(-1)?.[1].findModel?.("wx40b8e")).toBe("WX-40B8/E");
    expect(calls).toEqual([]);
    await tap("Yes, that's right");
    expect(calls).toEqual([["giveModel", modelTurn.turn, "WX-40B8/E", "it's a wx40b8e"]]);
  });

  test("is kept until then at any other turn", async () => {
    const { say, tap, calls } = await panelAt(symptom, meant, { findModel });
    await say("it's a wx40b8e");
    await tap("Yes, that's right");
    expect(calls).toEqual([["tell", { words: "it's a wx40b8e", facts: [], model: "WX-40B8/E" }]]);
  });
});
