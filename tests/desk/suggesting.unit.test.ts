import { describe, expect, test } from "vitest";
import {
  emptyRoom,
  type Heard,
  type Said,
  type SharedRoom,
  type Suggestion,
} from "../../src/cobrowse/client/index.ts";
import { metasIn } from "../../src/desk/board/chart-checks.ts";
import {
  boardOf,
  chartChecksOf,
  choicesAt,
  fateOf,
  matching,
  nextChecksOf,
  pointedAt,
  sayableIn,
  suggestionText,
} from "../../src/desk/board/index.ts";
import { memoryOf, metaOf, type Session, startSession } from "../../src/session/index.ts";
import { turnOf } from "../../src/turn/index.ts";
import { type Answers, at, healthy, take } from "../session/drive.ts";
import { followedOf, guide, texts, walkTo } from "./followed.ts";

const turnAt = (session: Session) => turnOf(session, texts, at(60));
const asked = walkTo("ice-bin.look");
const measuring = walkTo("flow-test.run");

type Fated = [Suggestion, Heard["is"]?];

const room = (...said: Fated[]): SharedRoom => ({
  ...emptyRoom,
  said: said.map(([suggestion, is = null as never], place) => ({
    seq: place + 1,
    from: "a1",
    at: 0,
    by: "agent",
    suggestion,
    is,
  })),
});

describe("an agent may point at and propose", () => {
  test("answers of a question that is looked at", () => {
    expect(choicesAt(turnAt(asked)).map(({ id }) => id)).toContain("fine");
  });

  test("nothing at a gate, a reading, a wait or an ending, wherever a search comes to", () => {
    const kinds = new Set<string>();
    const ways: Answers[] = [{}, { "flow-test.run": "cannot" }, { "supply-line.look": "kinked" }];
    for (const answers of ways)
      for (let session = startSession(guide, at(0)); ; ) {
        const turn = turnAt(session);
        kinds.add(turn.kind);
        if (turn.kind !== "choice") expect(choicesAt(turn)).toEqual([]);
        if (turn.kind === "ending") break;
        const given = { ...healthy, ...answers }[turn.turn] ?? (turn.kind === "gate" ? "ready" : "not-sure");
        session = take(session, given);
      }
    expect([...kinds].sort()).toEqual(["choice", "ending", "gate", "reading", "wait"]);
    expect(choicesAt(null)).toEqual([]);
  });

  test("checks that are allowed now, the adviser's own first, and not the one that they are at", () => {
    const next = nextChecksOf(asked, texts);
    const chart = new Map(chartChecksOf(asked, texts).map(({ id, is }) => [id, is]));
    expect(next.length).toBeGreaterThan(1);
    for (const { check } of next) expect(chart.get(check)).toBe("open");
    expect(next.map(({ check }) => check)).not.toContain(metaOf(asked).check);
    const { check } = asked.adviser?.advise(memoryOf(asked)) ?? {};
    if (check !== metaOf(asked).check) expect(next[0]?.check).toBe(check);
    for (const { tells } of next) expect(tells).toMatch(/About (a minute|\d+ min)$/);
  });

  test("no check before the opening has led to a scenario, and none at an ending", () => {
    expect(nextChecksOf(startSession(guide, at(0)), texts)).toEqual([]);
    expect(boardOf(measuring, texts).next.length).toBeGreaterThan(0);
  });
});

describe("what is said by voice", () => {
  const sayable = sayableIn(measuring, texts);

  test("may be any answer of a question that is looked at, of the opening or the scenario", () => {
    expect(sayable.length).toBeGreaterThan(50);
    expect(sayable).toContainEqual(expect.objectContaining({ turn: "opening.supply", answer: "plumbed" }));
    expect(sayable).toContainEqual(expect.objectContaining({ turn: "ice-bin.look", answer: "fine" }));
    for (const { title, text } of sayable) expect(title && text).not.toBe("");
  });

  test("is never a gate, a reading, a wait or anything behind a gate", () => {
    const charts = [measuring.chart, guide.opening];
    const metas = charts.flatMap((chart) => [...metasIn(chart.states)]);
    const shut = metas.filter(({ kind, gated }) => kind !== "choice" || gated);
    expect(new Set(shut.map(({ kind }) => kind))).toContain("gate");
    const turns = new Set(sayable.map(({ turn }) => turn));
    for (const { turn } of shut) expect(turns).not.toContain(turn);
  });

  test("opens no tap, puts nothing back and reports no danger", () => {
    const turns = new Set(sayable.map(({ turn }) => turn));
    for (const turn of ["tap-reopen.open", "put-back.all", "stop-tap.open"])
      expect(turns).not.toContain(turn);
    for (const { answer } of sayable) expect(measuring.flow.dangers).not.toContain(answer);
  });

  test("is found by the beginnings of its words, in any order and case", () => {
    const found = matching(sayable, "BIN lump");
    expect(found.length).toBeGreaterThan(0);
    for (const { title, text } of found) expect(`${title} ${text}`).toMatch(/bin/i);
    expect(matching(sayable, "  ")).toEqual([]);
    expect(matching(sayable, "zeppelin")).toEqual([]);
  });
});

describe("what is pointed at", () => {
  const point: Suggestion = { kind: "point", turn: "ice-bin.look", answer: "fine" };

  test("is the answer of the agent's last word about the open turn", () => {
    expect(pointedAt(room([point]), "a1", turnAt(asked))?.id).toBe("fine");
    expect(pointedAt(room([point]), "a2", turnAt(asked))).toBeNull();
  });

  test("is nothing once they have moved on", () => {
    expect(pointedAt(room([point]), "a1", turnAt(measuring))).toBeNull();
  });
});

describe("what was suggested", () => {
  const said = (...one: Fated) => room(one).said[0] as Said & { by: "agent" };

  test.each<[Suggestion, RegExp]>([
    [{ kind: "line", text: "Hello" }, /^Hello$/],
    [{ kind: "point", turn: "ice-bin.look", answer: "fine" }, /^Pointed at “It sits right and has room”$/],
    [{ kind: "propose", turn: "ice-bin.look", answer: "fine", why: "You said so" }, /answer “It sits right/],
    [{ kind: "propose", check: "flow-test", why: "" }, /check “Water flow”$/],
    [{ kind: "propose", ending: "professional", why: "" }, /call an engineer$/],
    [{ kind: "correct", model: "WXM 431AB8/1", why: "" }, /WXM 431AB8\/1$/],
    [
      { kind: "told", facts: [{ turn: "ice-bin.look", answer: "fine" }], words: "" },
      /Ice bin: It sits right/,
    ],
  ])("is said in words: %o", (suggestion, words) => {
    expect(suggestionText(suggestion, texts).what).toMatch(words);
  });

  test("says what became of it: sent, still open, taken, or gone with its turn", () => {
    const point: Suggestion = { kind: "point", turn: "ice-bin.look", answer: "fine" };
    expect(fateOf(said({ kind: "line", text: "x" }), "ice-bin.look")).toBe("desk.fate.sent");
    expect(fateOf(said(point), "ice-bin.look")).toBe("desk.fate.open");
    expect(fateOf(said(point), "flow-test.run")).toBe("desk.fate.gone");
    expect(fateOf(said(point, "taken"), "flow-test.run")).toBe("desk.fate.taken");
  });
});

describe("the chart with where they are", () => {
  test("has its checks in its own order, what was done, where they are, and what may come next", () => {
    const rows = chartChecksOf(asked, texts);
    const order = [...new Set([...metasIn(asked.chart.states)].flatMap(({ check }) => check ?? []))];
    expect(rows.map(({ id }) => id)).toEqual(order);
    expect(rows.filter(({ is }) => is === "now").map(({ id }) => id)).toEqual(["ice-bin"]);
    for (const { id, is } of rows) if (memoryOf(asked).done.includes(id)) expect(is).toBe("done");
    expect(new Set(rows.map(({ is }) => is))).toEqual(new Set(["now", "done", "open", "shut"]));
  });

  test("has the questions of the opening before it has led to a scenario", () => {
    const rows = chartChecksOf(take(startSession(guide, at(0)), "none"), texts);
    expect(rows.find(({ id }) => id === "opening.danger")?.is).toBe("done");
    expect(rows.find(({ id }) => id === "opening.symptom")).toMatchObject({
      is: "now",
      name: "What happens",
    });
  });

  test("says what each check has found, in the words of the thread, and its place on the way", () => {
    const { lines } = followedOf(measuring).view;
    const bin = chartChecksOf(measuring, texts).find(({ id }) => id === "ice-bin");
    const line = lines.find(({ turn }) => turn === "ice-bin.look");
    expect(bin?.found).toEqual([{ title: line?.title, answer: line?.answer }]);
    expect(bin?.step).toBeGreaterThan(1);
  });
});
