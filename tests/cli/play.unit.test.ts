import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { findModel, parseCatalogue, partFor } from "../../src/catalogue/index.ts";
import { createPlay, type PlayLine, type PlayOptions } from "../../src/workbench/play/index.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { inTradeOrder, strips } from "../session/drive.ts";

const { catalogue } = parseCatalogue(
  JSON.parse(readFileSync(new URL("../../demo/catalogue.json", import.meta.url), "utf8")),
);
const anyModel = [...catalogue.models.values()].find(
  ({ code }) => partFor(catalogue, code, "door-seal").kind === "part",
);
const base: PlayOptions = {
  guide: inTradeOrder(ownFlow),
  locales: ownTexts,
  language: "en-GB",
  model: null,
  scenario: null,
  now: "2026-01-01T09:00:00Z",
  partFor: (code, kind) => partFor(catalogue, code, kind),
  findModel: (typed) => findModel(catalogue, typed),
};

/** Answers given one after the other; the last printed line. */
function play(options: Partial<PlayOptions>, lines: unknown[]): PlayLine {
  const session = createPlay({ ...base, ...options });
  return lines.reduce<PlayLine>((_, line) => session.take(JSON.stringify(line)), session.first);
}

const answers = (...ids: string[]) => ids.map((answer) => ({ answer }));
const toScenario = answers("none", "no-ice", "plumbed", "nothing");
const wornSeal = [
  ...answers(..."alive lock-off on usual closes fine clear in-freezer moves room torn".split(" ")),
  { reading: strips(1, 5, 8) },
  { answer: "cleaned" },
  { reading: strips(1, 5, 8) },
];

describe("a turn as a line", () => {
  test("prints the turn with its kind, station, hazards, text and answers", () => {
    const line = play({}, [...toScenario, { answer: "alive" }]);
    expect(line).toMatchObject({
      turn: "control-lock.look",
      kind: "choice",
      station: "controls",
      hazards: [],
    });
    expect(line.heading).toBe("Is the control lock on?");
    expect(line.answers?.map(({ id }) => id)).toEqual([
      "lock-off",
      "no-lock",
      "lock-on",
      "not-sure",
      "cannot",
    ]);
  });

  test("says what a reading needs", () => {
    const line = play(
      { scenario: "no-ice-plumbed" },
      answers(
        ..."alive lock-off on usual closes fine clear in-freezer moves room sound no-draught usual".split(
          " ",
        ),
      ),
    );
    expect(line.reading).toMatchObject({ instrument: "temperature" });
  });

  test("speaks American English on request", () => {
    const [answer] = [play({ locale: "en-US" } as never, toScenario)];
    expect(answer.kind).toBe("choice");
    expect(createPlay({ ...base, language: "en-US" }).first.answers?.map(({ text }) => text)).toContain(
      "Water near an outlet or plug",
    );
  });

  test("starts behind the opening where a scenario is named", () => {
    expect(play({ scenario: "no-ice-plumbed" }, []).turn).toBe("power.light");
  });
});

describe("a line that cannot be taken gets an error and changes nothing", () => {
  const bad: [string, string][] = [
    ["no JSON", "oops"],
    ["a list", "[]"],
    ["an answer the turn does not have", '{"answer":"purple"}'],
    ["another turn's answer", '{"turn":"reset.find","answer":"found"}'],
    [
      "a reading where none is asked",
      '{"reading":{"kind":"temperature","value":1,"unit":"C","with":"display"}}',
    ],
    ["a reading of no known shape", '{"reading":{"kind":"weather"}}'],
    ["a time that is none", '{"at":"yesterday"}'],
    ["nothing at all", "{}"],
  ];
  test.each(bad)("%s", (_name, line) => {
    const session = createPlay(base);
    expect(session.take(line)).toMatchObject({ error: expect.any(String), turn: "opening.danger" });
    expect(session.take('{"answer":"none"}').turn).toBe("opening.symptom");
  });

  test("a gate without every item", () => {
    const session = createPlay({ ...base, scenario: "no-ice-plumbed" });
    let line: PlayLine = session.first;
    // Somebody who can do nothing of all this meets the first gate soon enough; 30 is more than there are checks.
    for (let asked = 0; asked < 30 && line.kind !== "gate"; asked++)
      line = session.take('{"answer":"cannot"}');
    expect(line.kind).toBe("gate");
    const [first] = line.gate?.items ?? [];
    expect(session.take(JSON.stringify({ answer: "ready", items: [first?.id] }))).toMatchObject({
      error: expect.stringContaining("items"),
      turn: line.turn,
    });
  });
});

describe("an ending as a line", () => {
  test("names the cause, the part kind, the evidence and the part for the model code", () => {
    const line = play({ scenario: "no-ice-plumbed", model: anyModel?.code ?? "" }, wornSeal);
    expect(line.ending).toMatchObject({ outcome: "part", causeId: "seal-worn", part: { kind: "door-seal" } });
    expect(line.ending?.evidence.filter(({ proves }) => proves).map(({ turn }) => turn)).toEqual(
      expect.arrayContaining(["door-seal.paper-strip", "door-seal.strip-again"]),
    );
    expect(line.fits).toMatchObject({ kind: "part", part: { kind: "door-seal" } });
  });

  test("asks for the model code where none is known, and takes none for an answer", () => {
    expect(play({ scenario: "no-ice-plumbed" }, wornSeal).turn).toBe("part.model");
    const without = play({ scenario: "no-ice-plumbed" }, [...wornSeal, { code: null }]);
    expect(without.ending?.part).toMatchObject({ kind: "door-seal", model: null });
    expect(without.fits).toBeUndefined();
  });

  test("takes a code with a twin only where it is written as the catalogue has it", () => {
    const refused = play({ scenario: "no-ice-plumbed" }, [...wornSeal, { code: "wxm431ab81" }]);
    expect(refused).toMatchObject({ turn: "part.model", found: { kind: "near", typed: "wxm431ab81" } });
    expect(refused.error).toContain("not exactly");
    const taken = play({ scenario: "no-ice-plumbed" }, [...wornSeal, { code: "WXM 431AB8/1" }]);
    expect(taken.ending?.part).toMatchObject({ model: "WXM 431AB8/1" });
  });

  test("lets a day pass: early it shows the time left, late the next question", () => {
    const off = [...answers("alive", "lock-off", "off", "switched-on")];
    const options = { scenario: "no-ice-plumbed" };
    expect(play(options, [...off, { at: "2026-01-02T08:59:00Z" }])).toMatchObject({
      turn: "wait-for-ice.wait",
    });
    expect(play(options, [...off, { at: "2026-01-02T09:00:00Z" }])).toMatchObject({
      turn: "wait-for-ice.came",
    });
  });

  test("stops for a danger reported at any time", () => {
    expect(play({ scenario: "no-ice-plumbed" }, [{ danger: "gas" }]).ending).toMatchObject({
      outcome: "stopped",
    });
  });
});
