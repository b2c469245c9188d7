// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { beforeEach, expect, test } from "vitest";
import { PlatePhoto, type PlateReader } from "../../../src/panel/screens/photo/index.ts";
import type { PhotoModels } from "../../../src/turn/index.ts";
import { modelTurn } from "../gallery/measure-fixtures.ts";
import { viewOf } from "../gallery/turns.ts";
import { mount } from "../mount.tsx";
import { textsOf } from "../texts.ts";

const texts = textsOf("en-GB");

const candidate = (code: string, marks: boolean[] = []) => ({
  model: { code, key: code.replace(/\W/g, ""), brand: "Nordlicht", machine: "top-freezer" },
  marks,
  asTyped: false,
});
const near = (...codes: string[]): PhotoModels => ({
  kind: "near",
  isPhoto: true,
  typed: "WX40B8E",
  candidates: codes.map((code) => candidate(code)),
  differing: [],
  more: 0,
});

let root: HTMLElement;
let heard: (PhotoModels | null)[];
let ended: number;
beforeEach(() => {
  root = document.createElement("div");
  document.body.replaceChildren(root);
  heard = [];
  ended = 0;
});

/** A reader that finds `answer` in every photo. */
const readerOf = (answer: PlateReader["read"], draw: PlateReader["draw"] = drawn): PlateReader => ({
  megabytes: 6,
  draw,
  read: answer,
  end: () => {
    ended += 1;
  },
});
const drawn: PlateReader["draw"] = async (_, canvas) => {
  [canvas.width, canvas.height] = [160, 120];
  return null;
};

const show = (reader: PlateReader) =>
  act(() =>
    render(
      <PlatePhoto
        reader={reader}
        texts={texts}
        find={async (typed) => ({ kind: "unknown", typed })}
        found={(models) => void heard.push(models)}
      />,
      root,
    ),
  );
const take = (name = "plate.jpg") =>
  act(async () => {
    const input = root.querySelector("input") as HTMLInputElement;
    Object.defineProperty(input, "files", { value: [new File(["x"], name)], configurable: true });
    input.dispatchEvent(new Event("change"));
    for (let turn = 0; turn < 9; turn += 1) await Promise.resolve();
  });
const canvas = () => root.querySelector("canvas") as HTMLCanvasElement;
const status = () => root.querySelector("[role=status]")?.textContent;

test("before the first photo it is said how much has to load, and that nothing is kept", async () => {
  await show(readerOf(async () => null));
  expect(root.textContent).toContain("Take a photo of the plate");
  expect(root.textContent).toMatch(/stays on this device and is not kept.*about 6 MB/);
});

test("what a photo may show is handed on and stays beside its picture", async () => {
  await show(readerOf(async () => near("WX-40B8/E")));
  await take();
  expect(heard).toEqual([null, near("WX-40B8/E")]);
  expect(canvas().width).toBe(160);
});

test("when the screen goes, the picture is cleared and the reader let go", async () => {
  await show(readerOf(async () => near("WX-40B8/E")));
  await take();
  const left = canvas();
  await act(() => render(null, root));
  expect([left.width, left.height, ended]).toEqual([0, 0, 1]);
});

test.each([
  ["no-picture", "not a photo that we can read"],
  ["too-large", "too large"],
] as const)("a file that is %s is told in words and leaves nothing", async (problem, said) => {
  await show(
    readerOf(
      async () => near("WX-40B8/E"),
      async () => problem,
    ),
  );
  await take();
  expect(status()).toContain(said);
  expect(canvas().width).toBe(0);
  expect(heard).toEqual([null]);
});

test("where nothing is like a code of the shop's, it says what to try and that typing is left", async () => {
  await show(readerOf(async () => null));
  await take();
  expect(status()).toMatch(/closer.*Or type the code/);
});

test("where reading fails, the button goes and typing is all there is", async () => {
  await show(
    readerOf(async () => {
      throw new Error("forbidden");
    }),
  );
  await take();
  expect(status()).toBe("Photos cannot be read here. Type the code instead.");
  expect(root.querySelector("button")).toBeNull();
  expect(canvas().width).toBe(0);
});

test("stopped, a reading is thrown away even if it comes to something", async () => {
  let answer: (models: PhotoModels) => void = () => {};
  await show(readerOf(() => new Promise((done) => (answer = done))));
  await take();
  await act(() => [...root.querySelectorAll("button")].at(-1)?.click());
  await act(async () => answer(near("WX-40B8/E")));
  expect(heard).toEqual([null]);
  expect([canvas().width, status()]).toEqual([0, ""]);
});

test("a photo's models are confirmed like typed ones, and no word of what was read is kept", async () => {
  let found: (models: PhotoModels | null) => void = () => {};
  const panel = await mount(viewOf(modelTurn), {
    services: {
      showPhoto: async (_, given) => {
        found = given.found;
        return null;
      },
    },
  });
  await panel.settle();
  await act(() => found(near("WX-40B8/E", "WX-4088/E")));
  expect(panel.calls).toEqual([]);
  expect(panel.text()).toContain("Your photo may show one of these codes.");
  expect(panel.text()).not.toContain("WX40B8E");
  await panel.tap("This is mine: WX-4088/E");
  expect(panel.calls).toEqual([["giveModel", "model.code", "WX-4088/E", "WX-4088/E"]]);
});
