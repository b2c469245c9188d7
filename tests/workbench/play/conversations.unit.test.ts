import { describe, expect, test } from "vitest";
import type { PlayLine, PlayOptions } from "../../../src/workbench/play/index.ts";
import { createConversations, type Wishes } from "../../../src/workbench/play/index.ts";
import { ownFlow, ownTexts } from "../../own-flow.ts";
import { inTradeOrder } from "../../session/drive.ts";

const flow = ownFlow;
const base: PlayOptions = {
  guide: inTradeOrder(flow),
  locales: ownTexts,
  language: "en-GB",
  model: null,
  scenario: null,
  now: "2026-01-01T09:00:00Z",
  partFor: () => ({ kind: "none" }) as never,
  findModel: (typed) => ({ kind: "none", typed }) as never,
};

/** Opens what is wished, and refuses a scenario that is none. */
const open = ({ scenario = null, locale, now }: Wishes): PlayOptions | string =>
  scenario && !flow.scenarios[scenario]
    ? `"${scenario}" is none`
    : { ...base, scenario, language: locale ?? base.language, now: now ?? base.now };

const start = () => createConversations(base, open);
const send = (conversations: ReturnType<typeof start>, line: unknown): PlayLine =>
  conversations.take(JSON.stringify(line));

describe("a line that begins another conversation", () => {
  test("is answered by its first turn, whatever the one before was about", () => {
    const played = start();
    send(played, { answer: "none" });
    expect(send(played, { begin: { scenario: "no-ice-plumbed" } }).turn).toBe("power.light");
    expect(send(played, { begin: {} }).turn).toBe("opening.danger");
  });

  test("leaves nothing of the one before behind", () => {
    const played = start();
    send(played, { begin: { scenario: "no-ice-plumbed" } });
    const first = send(played, { answer: "alive" });
    send(played, { answer: "lock-off" });
    send(played, { begin: { scenario: "no-ice-plumbed" } });
    expect(send(played, { answer: "alive" })).toEqual(first);
  });

  test("goes on after an ending", () => {
    const played = start();
    send(played, { danger: "gas" });
    expect(played.isOver()).toBe(true);
    expect(send(played, { begin: {} }).turn).toBe("opening.danger");
    expect(played.isOver()).toBe(false);
  });

  test("speaks the language that is wished", () => {
    const american = send(start(), { begin: { locale: "en-US" } });
    expect(american.answers?.map(({ text }) => text)).toContain("Water near an outlet or plug");
  });

  test("starts at the time that is wished", () => {
    const played = start();
    send(played, { begin: { now: "2026-03-01T09:00:00Z", scenario: "no-ice-plumbed" } });
    for (const answer of ["alive", "lock-off", "off", "switched-on"]) send(played, { answer });
    const wait = send(played, { at: "2026-03-01T10:00:00Z" });
    expect(wait.wait?.from).toBe("2026-03-01T09:00:00Z");
  });

  test.each([
    ["a scenario that is none", { scenario: "no-fridge" }],
    ["a name that nobody knows", { speed: "high" }],
    ["a number", { now: 7 }],
    ["no object", 7],
    ["a list", ["no-ice-plumbed"]],
  ])("that cannot be used gets an error and changes nothing: %s", (_, begin) => {
    const played = start();
    const second = send(played, { answer: "none" });
    expect(send(played, { begin })).toMatchObject({ error: expect.any(String) });
    expect(played.hasBegun()).toBe(false);
    expect(send(played, { answer: "purple" })).toMatchObject({
      error: expect.any(String),
      turn: second.turn,
    });
  });
});
