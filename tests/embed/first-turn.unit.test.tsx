// @vitest-environment happy-dom
import { join } from "node:path";
import { render } from "preact";
import { act } from "preact/test-utils";
import { describe, expect, test } from "vitest";
import { readFlow } from "../../src/cli/flows-folder.ts";
import { readLocales } from "../../src/cli/locales-folder.ts";
import { createFirstTurns, type FirstTurn } from "../../src/session/index.ts";
import { Panel } from "../../src/ui/chat/index.ts";

const root = join(import.meta.dirname, "../..");
const locales = readLocales(join(root, "locales"));
const turns = createFirstTurns(readFlow(join(root, "flows")), locales);

/** Shows the panel as the first file does, taps every way out, and tells which texts it asked for. */
async function textsAskedBy({ view }: FirstTurn): Promise<string[]> {
  const asked = new Set<string>();
  const texts = (key: string) => {
    asked.add(key);
    return key;
  };
  const page = document.createElement("div");
  for (const shown of [view, { ...view, turn: null }])
    await act(() =>
      render(
        <Panel view={shown} actions={{} as never} services={{} as never} texts={texts} screens={null} />,
        page,
      ),
    );
  for (const button of page.querySelectorAll<HTMLButtonElement>("footer button"))
    await act(() => button.click());
  return [...asked].sort();
}

describe("what the first file knows by heart", () => {
  test("is a first turn for every language", () => {
    expect(Object.keys(turns).sort()).toEqual(Object.keys(locales).sort());
  });

  test.each(Object.entries(turns))(
    "%s: is all that the panel says before the engine has come",
    async (_, turn) => {
      expect(await textsAskedBy(turn)).toEqual(Object.keys(turn.texts).sort());
      expect(Object.values(turn.texts).filter((text) => !text)).toEqual([]);
    },
  );

  test.each(Object.entries(turns))("%s: the first question can be answered", (_, { view }) => {
    expect(view.turn?.kind).toBe("choice");
    expect(view.turn?.answers.length).toBeGreaterThan(1);
    expect(view.turn?.heading).not.toBe("");
  });
});
