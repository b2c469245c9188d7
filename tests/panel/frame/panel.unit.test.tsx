// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { chatFixtures } from "../gallery/chat-fixtures.ts";
import { linesOf, quietAnswers, turnWith, viewOf } from "../gallery/turns.ts";
import { allScreens, mount as mountPanel } from "../mount.tsx";

const first = turnWith({
  turn: "opening.danger",
  heading: "Is anything dangerous?",
  answers: [{ id: "no", text: "No", role: "own" }, ...quietAnswers],
});
const second = turnWith({ turn: "opening.doing", heading: "What is it doing?", answers: quietAnswers });

/** A panel that is looked at once the frame after each drawing is over. */
const mount: typeof mountPanel = async (...given) => {
  const panel = await mountPanel(...given);
  const show: typeof panel.show = async (...next) => {
    await panel.show(...next);
    vi.advanceTimersToNextFrame();
  };
  return { ...panel, show };
};

let scrolled: ReturnType<typeof vi.spyOn>;
beforeEach(() => {
  vi.useFakeTimers();
  scrolled = vi.spyOn(Element.prototype, "scrollIntoView");
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

describe("how to do it", () => {
  const shown = async (body: string[], note = "") => {
    await mount(viewOf(turnWith({ ...first, body, note })));
    const steps = [...document.querySelectorAll("ol.how > li")].map(({ textContent }) => textContent);
    return {
      steps,
      text: document.querySelector(".turn")?.textContent,
      small: document.querySelector(".small"),
    };
  };

  test("is a numbered list of its steps, with the note below", async () => {
    const { steps, text, small } = await shown(["Open the door.", "Look in."], "It may be iced up.");
    expect(steps).toEqual(["Open the door.", "Look in."]);
    expect(small?.textContent).toBe("It may be iced up.");
    expect(text).toMatch(/Look in\.It may be iced up\./);
  });

  test("is a paragraph where there is one step, and no note where there is none", async () => {
    const { steps, text, small } = await shown(["Look in."]);
    expect(steps).toEqual([]);
    expect(text).toContain("Look in.");
    expect(small).toBeNull();
  });
});

describe("focus", () => {
  test("stays where it was when the panel arrives, and nothing scrolls", async () => {
    const { focused } = await mount(viewOf(first));
    expect(focused()).toBe(document.body);
    expect(scrolled).not.toHaveBeenCalled();
  });

  test("moves to the new heading after a tap has led to a new turn", async () => {
    const { tap, show, focused } = await mount(viewOf(first));
    await tap("No");
    await show(viewOf(second, { lines: linesOf(1) }));
    expect(focused().textContent).toBe("What is it doing?");
  });

  test("stays put when a new turn comes without a tap, as from another tab", async () => {
    const { show, focused } = await mount(viewOf(first));
    await show(viewOf(second, { lines: linesOf(1) }));
    expect(focused()).toBe(document.body);
  });

  test("still moves when the engine arrives between the tap and the new turn", async () => {
    const { tap, show, focused } = await mount(viewOf(first), { screens: null });
    await tap("No");
    await show(viewOf(first), { screens: allScreens });
    expect(focused().textContent).not.toBe("Is anything dangerous?");
    await show(viewOf(second, { lines: linesOf(1) }));
    expect(focused().textContent).toBe("What is it doing?");
  });

  test("leaves a button before the button goes, and whatever stays keeps it", async () => {
    const { tap, show, button, focused, text } = await mount(viewOf(first));
    const gone = vi.fn(() => text());
    button("No").addEventListener("blur", gone);
    button("No").focus();
    await tap("No");
    await show(viewOf(second, { lines: linesOf(1) }));
    expect(gone).toHaveReturnedWith(expect.stringContaining("Is anything dangerous?"));
    button("Danger?").focus();
    await show(viewOf(first));
    expect(focused()).toBe(button("Danger?"));
  });

  test("no live region repeats what the focused heading says", async () => {
    const { all } = await mount(viewOf(first));
    const said = all("[role=status], [role=alert], [aria-live]").map((region) => region.textContent);
    expect(said.filter(Boolean)).toEqual([]);
  });
});

describe("a double tap", () => {
  test("is sent once", async () => {
    const { tap, calls } = await mount(viewOf(first));
    await tap("No");
    await tap("No");
    await tap("I'm not sure");
    expect(calls).toEqual([["answer", "opening.danger", "no"]]);
  });

  test("is sent once even before the screen had time to draw", async () => {
    const { button, calls } = await mount(viewOf(first));
    button("No").click();
    button("No").click();
    expect(calls).toHaveLength(1);
  });

  test("leaves no dead buttons behind when the view does not change", async () => {
    const { tap, settle, button, calls } = await mount(viewOf(first));
    await tap("No");
    // The button is pressed as it is tapped; all of them fade only where nothing comes at once.
    expect(button("No").getAttribute("aria-disabled")).toBe("false");
    vi.advanceTimersByTime(100);
    await settle();
    expect(button("No").getAttribute("aria-disabled")).toBe("true");
    vi.advanceTimersByTime(4000);
    await settle();
    expect(button("No").getAttribute("aria-disabled")).toBe("false");
    await tap("No");
    expect(calls).toHaveLength(2);
  });

  test("does not hold up the next turn's answers", async () => {
    const { tap, show, calls } = await mount(viewOf(first));
    await tap("No");
    await show(viewOf(second, { lines: linesOf(1) }));
    await tap("I'm not sure");
    expect(calls[1]).toEqual(["answer", "opening.doing", "not-sure"]);
  });
});

describe("what a turn shows", () => {
  test("hazards stand in one panel under the worst signal word, most severe first", async () => {
    const { all } = await mount(chatFixtures["hazards"] as never);
    expect(all(".word").map((word) => word.textContent)).toEqual(["DANGER"]);
    expect(all(".word svg")).toHaveLength(1);
    const told = (chatFixtures["hazards"]?.turn?.hazards ?? []).map(({ text }) => text);
    expect(told.length).toBeGreaterThan(3);
    expect(all(".signal p:not(.word)").map((hazard) => hazard.textContent)).toEqual(told);
  });

  test("a notice has no triangle", async () => {
    const { all } = await mount(
      viewOf(turnWith({ hazards: [{ id: "a", signal: "notice", text: "Wait." }] })),
    );
    expect(all(".word").map((word) => word.textContent)).toEqual(["NOTICE"]);
    expect(all(".word svg")).toHaveLength(0);
  });

  test("hazards that a gate has just covered are only a reminder", async () => {
    const { all } = await mount(
      viewOf(turnWith({ gated: true, hazards: [{ id: "a", signal: "danger", text: "Plug out." }] })),
    );
    expect(all(".signal.brief")).toHaveLength(1);
  });

  test("minutes and tools are one small line, and nothing where there are none", async () => {
    const { text, show, all } = await mount(viewOf(turnWith({ minutes: 3, tools: ["a jug", "a towel"] })));
    expect(text()).toContain("About 3 minutes · You need: a jug and a towel");
    await show(viewOf(turnWith({})));
    expect(all(".small")).toHaveLength(0);
  });

  test("before the engine has come, a reading says that it is on its way", async () => {
    const { text } = await mount(chatFixtures["waiting-for-engine"] as never, { screens: null });
    expect(text()).toContain("One moment…");
  });

  test("without a turn the ways out are there all the same", async () => {
    const { text, buttons } = await mount(viewOf(null));
    expect(text()).toContain("One moment…");
    expect(buttons()).toEqual(["Danger?", "More"]);
  });
});
