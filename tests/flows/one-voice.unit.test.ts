import { describe, expect, test } from "vitest";
import { createTexts, type Texts } from "../../src/turn/index.ts";
import { mapTexts } from "../../src/workbench/build/panel-data.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { readerOf } from "../turn/reader.ts";

/*
 * An ending speaks with one voice: what a part is proved for is said as a fact, and where nothing is proved no word says
 * that it is.
 */
const flow = ownFlow;
const locales = ownTexts;
const languages = Object.keys(mapTexts(locales, () => null));
const textsOf = (tag: string): Texts => createTexts(locales, tag, readerOf(flow));
const causes = Object.entries(flow.causes);
const forPart = (due: boolean) =>
  causes.flatMap(([id, { part, claim }]) => (part && (claim === "due") === due ? [{ id, part }] : []));

const doubts = /\b(may|might|perhaps|probably|possibly|not sure|haven't|not proved|unproved|guess)\b/i;
const proofs = /\bprove[sd]?\b/i;
const noProof = /\b(haven't|not) proved?\b/i;

describe.each(languages)("the voice of an ending in %s", (tag) => {
  const texts = textsOf(tag);

  test.each(forPart(false))("a part that is proved is named without a doubt: $id", ({ id, part }) => {
    const said = [
      texts(`causes.${id}.is`),
      texts("endings.part.body", { part: texts(`parts.${part}.name`) }),
      texts("claims.proved"),
      texts("part.claim-proved"),
      texts("part.proves"),
    ];
    expect(said.every(Boolean)).toBe(true);
    expect(said.filter((text) => doubts.test(text))).toEqual([]);
  });

  test.each(forPart(true))("a part that is only due is called proved nowhere: $id", ({ id, part }) => {
    const said = [
      texts(`causes.${id}.is`),
      texts("endings.part.due", { part: texts(`parts.${part}.name`) }),
      texts("claims.due"),
      texts("part.claim-due"),
      texts("part.points"),
    ];
    expect(said.every(Boolean)).toBe(true);
    expect(said.filter((text) => proofs.test(text) && !noProof.test(text))).toEqual([]);
  });

  test("where no cause was found, none is claimed, and where one was, none of its words says it wasn't", () => {
    expect(texts("endings.no-cause.body")).not.toMatch(proofs);
    expect(texts("endings.professional.body")).not.toMatch(/not sure|no part/);
  });

  test("no ending has a price of ours", () => {
    const trades = Object.keys(locales["en-GB"]?.who ?? {});
    const ages = ["young", "middle", "old"].flatMap((age) => [`part.${age}`, `work.${age}`]);
    const said = [
      texts("endings.worth"),
      texts("endings.worth-age"),
      ...trades.flatMap((who) => [texts(`who.${who}.worth`), texts(`who.${who}.worth-age`)]),
      ...ages.map((age) => texts(`endings.age.${age}`)),
    ];
    expect(said.filter((text) => /\d|[£$€]/.test(text))).toEqual([]);
    expect(said.filter(Boolean).length).toBeGreaterThan(2);
  });
});
