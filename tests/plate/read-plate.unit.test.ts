import { describe, expect, test } from "vitest";
import { findModel, parseCatalogue } from "../../src/catalogue/index.ts";
import { codesInLines, type Grey, type PrintedLine, readPlate } from "../../src/plate/index.ts";

const codes = [
  "WXM 431AB8/1",
  "WXM 431A88/1",
  "UM87-TXM5.2",
  "PK.T27R-2",
  "PK.T29V-2",
  "PK.T28A-2",
  "PK.T20P-2",
];
const { catalogue } = parseCatalogue({
  shop: "Larder Lane Spares",
  models: codes.map((code) => ({ code, brand: "Wexmarrow", machine: "top-freezer" })),
  parts: [],
});

const plain: Grey = { width: 40, height: 30, data: new Uint8Array(1200).fill(200) };
const line = (text: string, sure = 90): PrintedLine => ({ text, sure });

/** A reader that has these lines for one try after the other, and counts. */
function reading(...tries: PrintedLine[][]) {
  const asked: string[] = [];
  let reads = 0;
  return {
    asked,
    reads: () => reads,
    read: async () => tries[reads++] ?? [],
    find: async (code: string) => {
      asked.push(code);
      return findModel(catalogue, code);
    },
  };
}

const offered = async (tools: ReturnType<typeof reading>) =>
  (await readPlate(plain, tools)).map(({ model, distance }) => [model.code, distance]);

describe("a photo of a plate", () => {
  test("is read once where a line holds a code of the shop's", async () => {
    const tools = reading([line("WEXMARROW"), line("MODEL NO. UM87-TXM5.2"), line("SERIAL 5104 236181 K")]);
    expect(await offered(tools)).toEqual([["UM87-TXM5.2", 0]]);
    expect(tools.reads()).toBe(1);
  });

  test("is held against what looks alike: both codes are offered, what was read first", async () => {
    expect(await offered(reading([line("Model WXM 431A88/1")]))).toEqual([
      ["WXM 431A88/1", 0],
      ["WXM 431AB8/1", 2],
    ]);
  });

  test("is turned and cleaned until something is found, and a better reading takes the first place", async () => {
    const tools = reading([line("1/8836 WXM", 30)], [line("MODEL UMB7-TXN5.2")], [line("MODEL UM87-TXM5.2")]);
    expect(await offered(tools)).toEqual([["UM87-TXM5.2", 0]]);
    expect(tools.reads()).toBe(3);
  });

  test("that is plainly the right way up is not turned", async () => {
    const upright = [line("Made for household use"), line("Total volume 589 l  Net 758 l")];
    const tools = reading(upright, upright, upright, upright, upright, upright);
    expect(await offered(tools)).toEqual([]);
    expect(tools.reads()).toBe(3);
  });

  test("offers three codes at most, the nearest first", async () => {
    const found = await offered(reading([line("MODEL PK.T29R-2")]));
    expect(found).toEqual([
      ["PK.T27R-2", 10],
      ["PK.T29V-2", 10],
      ["PK.T20P-2", 16],
    ]);
  });

  test("that nobody waits for any longer is not read on", async () => {
    const tools = reading([], [line("MODEL UM87-TXM5.2")]);
    let isWanted = true;
    const read = async () => {
      isWanted = false;
      return tools.read();
    };
    expect(await readPlate(plain, { ...tools, read }, () => isWanted)).toEqual([]);
    expect(tools.reads()).toBe(1);
  });

  test("makes twelve lookups a reading at most, each code once", async () => {
    const junk = Array.from({ length: 40 }, (_, at) => line(`QQ${at + 10}ZZ${at} X${at}Y`));
    const tools = reading(junk, junk);
    await readPlate(plain, tools, () => tools.reads() < 2);
    expect(tools.asked.length).toBeLessThanOrEqual(12);
    expect(new Set(tools.asked).size).toBe(tools.asked.length);
  });
});

describe("what may be a code in the lines of a plate", () => {
  test.each([
    ["behind its label", [line("MODEL NO.  WXM 431AB8/1"), line("S/N 1384 483762 B")], "WXM 431AB8/1"],
    ["below its label", [line("Model No:"), line("PK.T47X-4W", 40), line("ART. 2630-019")], "PK.T47X-4W"],
    [
      "without a label, among units and words",
      [line("220-240V~ 50Hz 1.2A"), line("O6W8/10FD-EU", 50)],
      "O6W8/10FD-EU",
    ],
    ["with a label whose letters were misread", [line("M0DEL: UM87-TXM5.2")], "UM87-TXM5.2"],
  ])("comes first where it stands %s", (_, lines, code) => {
    expect(codesInLines(lines, 12)[0]).toBe(code);
  });

  test("is no voltage, no refrigerant and no word", () => {
    const lines = [
      "220-240V~ 50Hz 1.2A 160 W",
      "Refrigerant R600a 83 g",
      "Total volume 589 l",
      "17.2 bar",
      "45.2 kg/24 h",
    ];
    expect(
      codesInLines(
        lines.map((text) => line(text)),
        12,
      ),
    ).toEqual([]);
  });

  test("is looked for in the beginning of what has no end", () => {
    expect(codesInLines([line(`${"x".repeat(300)} UM87-TXM5.2`)], 12)).toEqual([]);
  });
});
