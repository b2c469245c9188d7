import { describe, expect, test } from "vitest";
import { needsOf } from "../../src/compile/index.ts";
import type { Check, Flow, Outcome, Preparation, TurnRule } from "../../src/guide/index.ts";
import { byPlugInstead, preparations } from "../../src/guide/index.ts";
import { createTexts, type Texts } from "../../src/turn/index.ts";
import { outcomesOf } from "../../src/workbench/verify/scope.ts";
import { ownFlow, ownTexts } from "../own-flow.ts";
import { readerOf } from "../turn/reader.ts";

/**
 * The proof over preparations believes the data. These tests hold the data against what the words of a turn have people
 * do: what they switch off, pull, close or take out there is put down by its answers, and nothing is put down as put
 * back that the words leave as it is.
 */

const tap = "(?:small tap|tap|shut-off valve|valve)";
const words: Partial<Record<Preparation, { ours: RegExp; back: RegExp }>> = {
  water: {
    ours: new RegExp(`\\bclose the ${tap}\\b`, "i"),
    back: new RegExp(`\\bopen (?:the ${tap}|it)\\b|\\b(?:tap|valve) open\\b|it's open`, "i"),
  },
  plug: {
    ours: /\bpull (?:the |its |the machine's )plug\b/i,
    back: /\bput (?:the|its) plug (?:back )?in\b|put it back in|push the plug fully in|goes back in/i,
  },
  "ice-maker": { ours: /switch the ice maker off/i, back: /switch (?:the ice maker|it) (?:back )?on/i },
  bin: {
    ours: /\btake the (?:ice )?bin (?:out|to the sink)|slide or lift it out and look at the ice/i,
    back: /(?:put|push) the (?:ice )?bin (?:back|in)|(?:slide|push) it in|put the bin in/i,
  },
  lock: { ours: /switch the (?:control )?lock on/i, back: /switch the lock off/i },
};

type Told = "ours" | "perhaps" | "back";

/** What a turn's words have people change, and in which state they leave it: `perhaps` where that hangs on what they see. */
function toldBy(how: string, { ours, back }: { ours: RegExp; back: RegExp }): Told | null {
  let told: Told | null = null;
  for (const line of how.split("\n")) {
    const [first = "", ...rest] = line.split(/(?<=[.?!])\s+/);
    const isAsked = first.endsWith("?") || /^if\b/i.test(first);
    for (const sentence of [first, ...rest]) {
      if (back.test(sentence)) told = isAsked || /\bif\b/i.test(sentence) ? told : told && "back";
      else if (ours.test(sentence)) told = isAsked || /\bif\b/i.test(sentence) ? "perhaps" : "ours";
    }
  }
  return told;
}

/** Every answer of every turn that leaves something otherwise than its words say. */
function mismatches(flow: Flow, texts: Texts): string[] {
  return Object.values(flow.checks).flatMap((check) =>
    Object.entries(check.turns).flatMap(([id, turn]) =>
      (Object.keys(words) as Preparation[]).flatMap((one) =>
        mismatchOf(flow, texts, check, id, turn, one).map((answer) => `${check.id}.${id} ${answer}: ${one}`),
      ),
    ),
  );
}

function mismatchOf(flow: Flow, texts: Texts, check: Check, id: string, turn: TurnRule, one: Preparation) {
  const own = Object.entries({ ...turn.answers, ...turn.verdicts });
  const unsure = turn.kind === "wait" || turn["not-sure"] === false ? [] : [turn["not-sure"]];
  const said = words[one];
  const told = said ? toldBy(texts(`checks.${check.id}.${id}.how`), said) : null;
  const { ours, back } = preparations[one];
  const gates = (turn.gates ?? check.gates ?? []).map((gate) => flow.gates[gate]);
  const ways = outcomesOf(check).filter(({ to }) => to === id);
  const gated =
    gates.some((gate) => gate?.leaves?.[one] === ours) ||
    (ways.length > 0 && ways.every(({ leaves }) => leaves?.[one] === ours));
  const isKept = (outcome?: Outcome | false) => gated || (outcome && outcome.leaves?.[one] !== undefined);
  const isOurs = (outcome?: Outcome | false) => gated || (outcome && outcome.leaves?.[one] === ours);
  const all = [...own, ...unsure.map((outcome): [string, typeof outcome] => ["not-sure", outcome])];
  const lost = all.flatMap(([answer, outcome]) => {
    const isLost =
      (told === "ours" && !isKept(outcome)) || (told === "back" && answer === "not-sure" && !isOurs(outcome));
    return isLost ? [answer] : [];
  });
  if (told === "perhaps" && !all.some(([, outcome]) => isOurs(outcome))) lost.push("none");
  const claimed = own.flatMap(([answer, { leaves }]) => {
    const text = `${texts(`checks.${check.id}.${id}.how`)} ${texts(`checks.${check.id}.${id}.answers.${answer}`)}`;
    return leaves?.[one] === back && said && !check.restores && !said.back.test(text) ? [answer] : [];
  });
  return [...lost, ...claimed];
}

const flow = ownFlow;
const locales = ownTexts;
const read = (tag: string) => createTexts(locales, tag, readerOf(flow));

const planted = (damage: (copy: Flow) => void) => {
  const copy = structuredClone(flow);
  damage(copy);
  return mismatches(copy, read("en-GB"));
};
const answerOf = (copy: Flow, check: string, turn: string, answer: string) => {
  const outcome = copy.checks[check]?.turns[turn]?.answers?.[answer];
  if (!outcome) throw new Error(`No answer ${check}.${turn} ${answer}`);
  return outcome;
};

describe("what the words of a turn have people change is put down by its answers", () => {
  for (const tag of ["en-GB", "en-US"])
    test(`in ${tag}`, () => {
      expect(mismatches(flow, read(tag))).toEqual([]);
    });

  test("a tap that the words leave closed and an answer calls open is found", () => {
    const found = planted((copy) => {
      answerOf(copy, "supply-line", "look", "copper-kinked").leaves = { water: "open" };
    });
    expect(found).toEqual(["supply-line.look copper-kinked: water"]);
  });

  test("so is an ice maker that is switched off, and nothing says so", () => {
    const found = planted((copy) => {
      delete answerOf(copy, "auger", "look", "broken").leaves;
    });
    expect(found).toEqual(["auger.look broken: ice-maker", "auger.look broken: bin"]);
  });

  test("so is a plug that was pulled by whoever can't say whether it is back in", () => {
    const found = planted((copy) => {
      const { turns } = copy.checks.reset ?? {};
      if (turns?.unplug) delete turns.unplug["not-sure"];
    });
    expect(found).toEqual(["reset.unplug not-sure: plug"]);
  });

  test("so is a tap that is to be closed where it drips, and no answer has it closed", () => {
    const found = planted((copy) => {
      for (const answer of ["wet", "dry"]) answerOf(copy, "watch-leak", "look", answer).leaves = {};
    });
    expect(found).toEqual(["watch-leak.look none: water"]);
  });
});

describe("a gate that a pulled plug satisfies", () => {
  const gates = Object.entries(flow.gates).filter(([id]) => {
    const items = flow.gates[id]?.items ?? [];
    return items.some((item) => /pulled the plug/.test(read("en-GB")(`gates.${id}.items.${item}`)));
  });

  test.each(gates)("%s leaves the plug out, or what is put back with it", (_, { leaves = {} }) => {
    const instead = Object.keys(byPlugInstead).some((one) => one in leaves);
    expect(leaves.plug === "out" || instead).toBe(true);
  });

  test("has all that it may stand in for put back before whatever needs power", () => {
    const needy = Object.values(flow.checks).flatMap((check) =>
      Object.values(check.turns).flatMap((turn) =>
        turn.needs?.plug === "in" ? [needsOf(flow, check, turn)] : [],
      ),
    );
    expect(needy.length).toBeGreaterThan(20);
    for (const needs of needy) expect(needs).toMatchObject(byPlugInstead);
  });
});
