import { readFileSync } from "node:fs";
import { afterAll, beforeAll, expect, test } from "vitest";
import { kinds, relayBounds } from "../../src/cobrowse/protocol/index.ts";
import { tokenFor } from "./relay/agents.ts";
import { type Caller, call, type Running, startRelay } from "./relay/sockets.ts";

const page = readFileSync(new URL("../../src/cobrowse/PROTOCOL.md", import.meta.url), "utf8");
const lines = [...page.matchAll(/^```example\n([\s\S]*?)^```/gm)].flatMap(([, block = ""]) =>
  block.trim().split("\n"),
);

let running: Running;
beforeAll(async () => {
  running = await startRelay();
});
afterAll(() => running.relay.close());

test("every example of the page is what a relay does, in this order", async () => {
  const known = new Map<string, unknown>([["$token", tokenFor()]]);
  const callers = new Map<string, Caller>();
  const filled = (message: object) =>
    Object.fromEntries(Object.entries(message).map(([key, value]) => [key, known.get(value) ?? value]));
  for (const line of lines) {
    const [, who = "", does, text = ""] = /^([\w-]+) ([<>x]) (.+)$/.exec(line) ?? [];
    const caller = callers.get(who) ?? (await call(running));
    callers.set(who, caller);
    if (does === ">") caller.say(filled(JSON.parse(text)));
    else if (does === "x") expect(await caller.closed, line).toBe(Number(text));
    else {
      const written = JSON.parse(text);
      // Entries that the page has shown for another reader may come in between.
      let heard: Record<string, unknown>;
      do heard = await caller.hear(written.type);
      while (written.type === "record" && heard.seq !== written.seq);
      for (const [key, value] of Object.entries(written))
        if (typeof value === "string" && value.startsWith("$")) {
          if (value !== "$" && !/end/.test(value) && known.has(value))
            expect(heard[key], line).toBe(known.get(value));
          known.set(value, heard[key]);
          if (value === "$") known.delete(value);
        }
      const anything = Object.entries(written).filter(([, value]) => String(value).startsWith("$"));
      expect(heard, line).toEqual({
        ...written,
        ...Object.fromEntries(anything.map(([key]) => [key, heard[key]])),
      });
    }
  }
  expect(lines.length).toBeGreaterThan(30);
});

test("the page's table has what each may send, and no more", () => {
  const rows = [...page.matchAll(/^\| `(carried|steering)` +\|(.+)\|(.+)\|$/gm)];
  const namesIn = (cell = "") => [...cell.matchAll(/`([\w-]+)`/g)].map(([, kind]) => kind);
  const written = rows.map(([, lane, householder, agent]) => [
    lane,
    { householder: namesIn(householder), agent: namesIn(agent) },
  ]);
  expect(Object.fromEntries(written)).toEqual(kinds);
});

test("the page has the bounds that the relay has", () => {
  const { entries, steering, peers, perSecond, burst, tries, failures, failuresOfAll, dropped } = relayBounds;
  for (const words of [
    `${peers} people, ${entries}`,
    `${steering} steps of steering`,
    `${perSecond} messages a second and ${burst} at once`,
    `${tries} tries a minute`,
    `${failures} failures in a row`,
    `${failuresOfAll} failures a minute`,
    `${dropped} in a\nrow end the line`,
  ])
    expect(page).toContain(words);
});
