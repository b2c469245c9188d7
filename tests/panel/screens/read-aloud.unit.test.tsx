// @vitest-environment happy-dom
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { turnWith, viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";

const turn = turnWith({
  turn: "ice-bin.look",
  heading: "What do you see?",
  hazards: [{ id: "tray", signal: "caution", text: "Keep your hands out." }],
  body: ["Open the freezer.", "Look into the bin."],
  answers: [
    { id: "fine", text: "Loose cubes", role: "own" },
    { id: "not-sure", text: "I'm not sure", role: "not-sure" },
  ],
});

class Utterance extends EventTarget {
  voice: { name: string } | null = null;
  lang = "";
  constructor(readonly text: string) {
    super();
  }
}

/** A device with these voices. */
function withVoices(...voices: { name: string; lang: string; localService: boolean }[]) {
  const spoken: Utterance[] = [];
  const cancel = vi.fn();
  vi.stubGlobal("SpeechSynthesisUtterance", Utterance);
  vi.stubGlobal("speechSynthesis", {
    getVoices: () => voices,
    speak: (one: Utterance) => spoken.push(one),
    cancel,
    addEventListener: () => {},
    removeEventListener: () => {},
  });
  return { spoken, cancel };
}
const aloud = { name: "Ada", lang: "en-GB", localService: true };
const away = { name: "Cloud", lang: "en-GB", localService: false };

const read = "Read it to me";

describe("'read it to me'", () => {
  beforeEach(() => vi.unstubAllGlobals());
  afterEach(() => vi.unstubAllGlobals());

  test("is not there without a voice of the device's own in the language: another would send the text away", async () => {
    for (const voices of [[], [away], [{ name: "Ole", lang: "da-DK", localService: true }]]) {
      withVoices(...voices);
      const { all } = await mount(viewOf(turn));
      expect(all(".aloud")).toEqual([]);
    }
  });

  test("speaks the question, what is dangerous, the steps and the answers, by the voice of the country", async () => {
    const { spoken } = withVoices({ name: "Bo", lang: "en-US", localService: true }, away, aloud);
    const { tap } = await mount(viewOf(turn));
    await tap(read);
    expect(spoken.map(({ text }) => text.split("\n"))).toEqual([
      ["What do you see?", "Keep your hands out.", "Open the freezer.", "Look into the bin.", "Loose cubes"],
    ]);
    expect([spoken[0]?.voice?.name, spoken[0]?.lang]).toEqual(["Ada", "en-GB"]);
  });

  test("is stopped by a second tap, by its end and by the next turn", async () => {
    const { spoken, cancel } = withVoices(aloud);
    const { tap, button, show } = await mount(viewOf(turn));
    const pressed = () => button(read).getAttribute("aria-pressed");
    await tap(read);
    expect(pressed()).toBe("true");
    await tap(read);
    expect(pressed()).toBe("false");
    await tap(read);
    await act(() => spoken[1]?.dispatchEvent(new Event("end")) as never);
    expect(pressed()).toBe("false");
    await tap(read);
    cancel.mockClear();
    await show(viewOf(turnWith({ turn: "chute-flap.look" })));
    expect(cancel).toHaveBeenCalledOnce();
    expect(pressed()).toBe("false");
  });
});
