import { describe, expect, test } from "vitest";
import { metaOf, record, type Session, startSession } from "../../src/session/index.ts";
import { createTexts, handoverOf, handoverText } from "../../src/turn/index.ts";
import { guideFor } from "../compiled-once.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { at, flowOf, inTradeOrder, take } from "../session/drive.ts";
import { reach } from "../session/reach.ts";
import { readerOf } from "./reader.ts";

const texts = createTexts(ownTexts, "en-GB", readerOf(ownFlow));
const start = startSession(inTradeOrder(ownFlow), at(0));

const sumUp = (session: Session, besides = {}) =>
  handoverOf(session, texts, at(900), { said: [], ...besides });
const part = (session: Session, heading: string, besides = {}) =>
  sumUp(session, besides).parts.find((one) => one.heading === heading)?.lines ?? [];

const behind = reach(start, "supply-line.look");
const helped = record(behind, { type: "help-asked", at: at(900) }).session;

describe("what whoever takes over reads", () => {
  test("is there before anything was answered: the question that is open", () => {
    expect(sumUp(start).parts.map(({ heading }) => heading)).toEqual(["Where it stands"]);
  });

  test("names the likeliest causes in their order, at any turn of a scenario", () => {
    const led = reach(startSession(guideFor(ownFlow), at(0)), "flow-test.run");
    const likely = part(led, "Most likely, in this order");
    expect(likely.length).toBeGreaterThan(1);
    expect(likely.map((line) => line.slice(0, 2))).toEqual(likely.map((_, place) => `${place + 1}.`));
  });

  test("has every finding with the time at which it was made, readings with their uncertainty", () => {
    const measured = take(reach(start, "flow-test.run"), flowOf(6));
    const found = part(measured, "Found so far");
    for (const line of found) expect(line).toMatch(/^\d{2}:\d{2} /);
    expect(found.join("\n")).toMatch(/60 g in 10 s ± 1: too little water$/);
  });

  test("says what is changed in the home and which safety steps were confirmed", () => {
    expect(part(behind, "Changed and not put back yet")).toContain("Water is off");
    expect(part(behind, "Safety steps confirmed").length).toBeGreaterThan(0);
    expect(part(start, "Safety steps confirmed")).toEqual([]);
  });

  test("says what is ruled out and where nobody has looked", () => {
    expect(part(behind, "Looked at, and not").join(" ")).toMatch(/Ruled out: .*Not looked at: /);
  });

  test("has own words, variant and serial number beside the machine", () => {
    expect(part(behind, "In their own words", { said: ["It hums."] })).toEqual(["“It hums.”"]);
    const machine = part(behind, "The machine", { variant: "/2", serial: "KX 1234" });
    expect(machine).toContain("Variant: /2");
    expect(machine).toContain("Serial number: KX 1234");
  });

  test("says at an ending whom to call", () => {
    expect(metaOf(helped).outcome).toBe("professional");
    const [heading, who] = part(helped, "Where it stands");
    expect([heading, who]).toEqual([expect.stringMatching(/./), expect.stringMatching(/./)]);
  });

  test("as a message has all of it, a line each", () => {
    const handover = sumUp(behind, { said: ["It hums."] });
    const text = handoverText(handover);
    for (const { heading, lines } of handover.parts) {
      expect(text).toContain(`\n\n${heading}\n`);
      for (const line of lines) expect(text).toContain(`\n- ${line}`);
    }
  });
});
