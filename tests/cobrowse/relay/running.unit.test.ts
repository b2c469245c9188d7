import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { openFileStore } from "../../../src/cobrowse/relay/index.ts";
import { tokenFor } from "./agents.ts";
import { call, comeBack, joinRoom, meet, openRoom, type Running, records, startRelay } from "./sockets.ts";

/* A relay as it runs: killed, stopped, watched, and read in its log. */

let running: Running | null = null;
afterEach(async () => {
  await running?.relay.close();
  running = null;
});
const start = async (...options: Parameters<typeof startRelay>) => {
  running = await startRelay(...options);
  return running;
};
const noFault = (problem: unknown) => {
  throw problem;
};

describe("a relay that is killed", () => {
  test("in mid-run loses nothing that it acknowledged and repeats nothing", async () => {
    const folder = mkdtempSync(join(tmpdir(), "relay "));
    const path = join(folder, "relay.log");
    const first = await startRelay({ store: await openFileStore(path, Date.now(), noFault) });
    const { phone, desk } = await meet(first);
    for (const body of ["1", "2", "3"]) phone.put("entry", body);
    while ((await phone.hear("kept")).n < 3);
    // All that a kill leaves: the file as it is at this moment.
    const left = readFileSync(path);
    await first.relay.close();
    writeFileSync(path, left);

    const second = await start({ store: await openFileStore(path, Date.now(), noFault) });
    const [back, agent] = [await comeBack(second, phone, 4), await comeBack(second, desk, 3)];
    // The phone had heard of no acknowledgement of its third, and says it again.
    back.put("entry", "3", 3);
    back.put("entry", "4", 4);
    while ((await back.hear("kept")).n < 4);
    agent.put("line", "hello");
    const seen = await records(agent, 5);
    expect(seen.map(({ seq, from, body }) => `${seq} ${from} ${body}`)).toEqual([
      "4 h 1",
      "5 h 2",
      "6 h 3",
      "7 h 4",
      "8 a1 hello",
    ]);
    while ((await back.hear("record")).seq < 8);
    const all = back.heard.map((text) => JSON.parse(text)).filter(({ type }) => type === "record");
    expect(all.map(({ seq }) => seq)).toEqual([5, 6, 7, 8]);
    await second.relay.close();
    running = null;
    rmSync(folder, { recursive: true });
  });
});

describe("a line", () => {
  test("that another of the same person replaces is ended, and both see the same", async () => {
    const { phone, desk } = await meet(await start());
    const back = await comeBack(running as Running, phone, 0);
    expect((await phone.hear("no")).why).toBe("replaced");
    expect(await phone.closed).toBe(4001);
    back.put("entry", "from the new line", 1);
    // The first it has seen already; those after it are the one admission and the entry, each once.
    expect((await records(desk, 3)).map(({ kind }) => kind)).toEqual(["joined", "admit", "entry"]);
  });

  test("is told of a gap, of a pause and of its end", async () => {
    const { phone, desk } = await meet(await start());
    phone.put("entry", "second", 2);
    expect(await phone.hear("missing")).toEqual({ type: "missing", lane: "carried", last: 0 });
    phone.put("pause", "");
    await phone.hear("kept");
    desk.put("line", "hello", 1);
    expect(await desk.hear("wait")).toEqual({ type: "wait", lane: "carried", n: 1, why: "paused" });
    phone.put("resume", "");
    await phone.hear("kept");
    desk.put("line", "hello", 1);
    await desk.hear("kept");
    phone.put("end", "");
    expect((await desk.hear("no")).why).toBe("ended");
    expect(await desk.closed).toBe(4000);
    expect(desk.heard.map((text) => JSON.parse(text)).filter(({ kind }) => kind === "end")).toHaveLength(1);
  });

  test("says again what was kept before a pause, and is told that it was", async () => {
    const { phone, desk } = await meet(await start());
    desk.put("line", "hello");
    await desk.hear("kept");
    phone.put("pause", "");
    while ((await phone.hear("record")).kind !== "pause");
    desk.put("line", "hello", 1);
    expect(await desk.hear("kept")).toMatchObject({ n: 1 });
  });

  test("says again anything that was kept, and is told each time that it was, and where", async () => {
    const { phone, desk } = await meet(await start());
    for (const body of ["1", "2", "3"]) phone.put("entry", body);
    while ((await phone.hear("kept")).n < 3);
    for (const n of [2, 1, 3]) {
      phone.put("entry", `${n}`, n);
      const answers = phone.heard.length;
      phone.put("entry", "5", 5);
      // Both answers in their order: that it was kept, and that what came too early was not.
      expect(await phone.hear("missing")).toEqual({ type: "missing", lane: "carried", last: 3 });
      const own = phone.heard.slice(answers).filter((text) => !text.includes('"record"'));
      expect(JSON.parse(own[0] ?? "")).toEqual({ type: "kept", lane: "carried", n, seq: n + 3 });
    }
    expect((await records(desk, 5)).map(({ seq }) => seq)).toEqual([2, 3, 4, 5, 6]);
  });

  test("of an agent who is turned away is ended, and they do not come back", async () => {
    const { phone, desk } = await meet(await start());
    phone.put("turn-away", desk.peer);
    expect((await desk.hear("no")).why).toBe("gone");
    const again = await call(running as Running);
    again.say({ type: "return", v: 1, room: desk.room, peer: desk.peer, secret: desk.secret, after: 0 });
    expect((await again.hear("no")).why).toBe("gone");
    expect(again.heard.join()).not.toContain("record");
  });
});

describe("the log", () => {
  test("has nothing that anybody typed, said, is called or comes from", async () => {
    const canary = "canary";
    const relay = await start();
    const phone = await openRoom(relay, "192.0.2.77");
    const token = tokenFor({ sub: `${canary}-1`, name: `Mr ${canary}` });
    const desk = await joinRoom(relay, phone.code, "192.0.2.78", token);
    phone.put("admit", desk.peer);
    await desk.hear("record");
    phone.put("entry", `{"typed":"${canary}"}`);
    desk.put("propose", canary);
    await phone.hear("kept");
    await desk.hear("kept");
    for (const first of [
      canary,
      { type: canary },
      { type: "open", v: 1, [canary]: 1 },
      { type: "join", v: 1, code: canary, token: canary },
    ]) {
      const caller = await call(relay, "192.0.2.79");
      caller.say(first);
      await caller.hear("no");
    }
    await expect(call(relay, "192.0.2.80", { origin: `https://${canary}.example` })).rejects.toThrow("403");
    await expect(call(relay, "192.0.2.80", {}, `/${canary}`)).rejects.toThrow("404");
    phone.put(canary, canary, 9);
    await phone.closed;
    await relay.relay.close();
    running = null;
    const log = relay.logged.join("");
    expect(log).toMatch(/came in/);
    expect(log).toMatch(/malformed/);
    for (const secret of [
      canary,
      "192.0.2",
      phone.secret,
      desk.secret,
      phone.code,
      token.slice(-20),
      phone.room,
    ])
      expect(log).not.toContain(secret);
  });
});

describe("a watcher", () => {
  test("sees health, readiness and counters, in the text format that Prometheus reads", async () => {
    const { phone } = await meet(await start());
    phone.put("entry", "x");
    await phone.hear("kept");
    const ask = (path: string) => fetch(`http://127.0.0.1:${running?.watchPort}${path}`);
    expect((await ask("/health")).status).toBe(200);
    expect((await ask("/ready")).status).toBe(200);
    expect((await ask("/else")).status).toBe(404);
    const metrics = await ask("/metrics");
    expect(metrics.headers.get("content-type")).toContain("version=0.0.4");
    const text = await metrics.text();
    expect(text).toContain("fridgeside_relay_agents_joined_total 1\n");
    expect(text).toContain("fridgeside_relay_lines 2\n");
    // Prometheus' exposition format: comments, and samples of a name, labels and a value.
    for (const line of text.trimEnd().split("\n"))
      expect(line).toMatch(/^(# (HELP|TYPE) [a-z_]+ .+|[a-z_]+(\{[a-z]+="[\w-]*"\})? \d+(\.\d+)?)$/);
    expect(text.endsWith("\n")).toBe(true);
  });
});

describe("a relay that stops", () => {
  test("tells everybody where to go and when, each in a span of their own", async () => {
    const { phone, desk } = await meet(await start({ next: "wss://other.example/rooms", chance: () => 0.5 }));
    const stopped = running?.relay.close();
    running = null;
    for (const one of [phone, desk]) {
      expect(await one.hear("moving")).toEqual({
        type: "moving",
        wait: 2500,
        to: "wss://other.example/rooms",
      });
      expect(await one.closed).toBe(1012);
    }
    await stopped;
  });

  test("is no longer ready, and takes nobody", async () => {
    const relay = await start();
    await relay.relay.close();
    running = null;
    await expect(call(relay)).rejects.toThrow();
  });
});
