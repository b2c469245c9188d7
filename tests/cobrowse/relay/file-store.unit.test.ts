import {
  appendFileSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { openFileStore } from "../../../src/cobrowse/relay/file-store.ts";
import { linesOf, readLines } from "../../../src/cobrowse/relay/lines.ts";
import type { Change } from "../../../src/cobrowse/relay/shelf.ts";
import type { Store } from "../../../src/cobrowse/relay/store.ts";

let folder = "";
let path = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "relay "));
  path = join(folder, "relay.log");
});
afterEach(() => rmSync(folder, { recursive: true }));

const faults: unknown[] = [];
const open = (now = 0) => openFileStore(path, now, (problem) => faults.push(problem));
const say = (store: Store, n: number, body = `${n}`, room = "r") =>
  store.append(room, { from: "h", n, kind: "entry", body }, n, { seen: 0, until: null });
const bodies = async (store: Store, room = "r") => (await store.after(room, 0)).map(({ body }) => body);

/** Ends a store as a kill does: what was written stays, and so does the lock of a process that is gone. */
async function kill(store: Store): Promise<void> {
  const kept = readFileSync(path);
  await store.close();
  writeFileSync(path, kept);
  writeFileSync(`${path}.lock`, `${2 ** 30}`);
}

describe("a file", () => {
  test("has after a kill all that was acknowledged, and knows what is said again", async () => {
    const first = await open();
    for (let n = 1; n <= 5; n++) await say(first, n);
    await kill(first);
    const second = await open();
    expect(await bodies(second)).toEqual(["1", "2", "3", "4", "5"]);
    expect(await say(second, 5)).toMatchObject({ type: "known", stored: { seq: 5 } });
    expect(await say(second, 6)).toMatchObject({ type: "fresh", stored: { seq: 6 } });
    await second.close();
  });

  test("is written and synced once for all that come at a time", async () => {
    const store = await open();
    const groups: number[] = [];
    await Promise.all(Array.from({ length: 50 }, (_, place) => say(store, place + 1)));
    for (const line of readFileSync(path, "utf8").trim().split("\n")) {
      const [place] = JSON.parse(line.slice(9)) as [number];
      if (place === 0) groups.push(0);
      groups[groups.length - 1] = place + 1;
    }
    expect(groups.reduce((sum, each) => sum + each, 0)).toBe(50);
    expect(groups.length).toBeLessThanOrEqual(2);
    await store.close();
  });

  test("tells followers in the order of the log, and only of what is on the disk", async () => {
    const store = await open();
    const told: number[] = [];
    store.follow({
      kept: (_, { seq, body }) => {
        told.push(seq);
        expect(readFileSync(path, "utf8")).toContain(`"body":"${body}"`);
      },
      seated: () => {},
      lost: () => {},
    });
    await Promise.all([say(store, 1), say(store, 2), say(store, 3)]);
    expect(told).toEqual([1, 2, 3]);
    await store.close();
  });

  test("whose last line is torn, at any byte, is read up to it and goes on from there", async () => {
    const first = await open();
    for (let n = 1; n <= 3; n++) await say(first, n);
    await kill(first);
    const whole = readFileSync(path);
    const start = whole.lastIndexOf(10, whole.length - 2) + 1;
    for (const end of [start + 1, start + 8, start + 20, whole.length - 1]) {
      writeFileSync(path, whole);
      truncateSync(path, end);
      writeFileSync(`${path}.lock`, `${2 ** 30}`);
      const store = await open();
      expect(await bodies(store)).toEqual(["1", "2"]);
      await say(store, 3, "again");
      await kill(store);
      const next = await open();
      expect(await bodies(next)).toEqual(["1", "2", "again"]);
      await next.close();
    }
  });

  test("that has nothing but a torn line is an empty one, and is written on", async () => {
    writeFileSync(path, linesOf([{ op: "forget", room: "r" }]).slice(0, 12));
    const first = await open();
    await say(first, 1);
    await kill(first);
    const second = await open();
    expect(await bodies(second)).toEqual(["1"]);
    await second.close();
  });

  test("of which an acknowledged line is damaged is refused: no power cut does that", async () => {
    const first = await open();
    for (let n = 1; n <= 3; n++) await say(first, n);
    await first.close();
    const text = readFileSync(path, "utf8");
    writeFileSync(path, text.replace('"body":"2"', '"body":"x"'));
    await expect(open()).rejects.toThrow(/damaged after its first \d+ bytes/);
    writeFileSync(path, text);
    const store = await open();
    await store.close();
  });

  test("belongs to one relay at a time", async () => {
    const store = await open();
    writeFileSync(`${path}.lock`, "1");
    await expect(open()).rejects.toThrow(/Another relay/);
    await store.close();
  });

  test("forgets a room from the disk as well, and keeps the others", async () => {
    const store = await open();
    await say(store, 1, "secret words", "gone");
    await say(store, 1, "kept words", "kept");
    await store.forget("gone");
    await store.tidy(0);
    expect(readFileSync(path, "utf8")).not.toContain("secret words");
    await say(store, 2, "more", "kept");
    await kill(store);
    const next = await open();
    expect(await next.rooms()).toEqual(["kept"]);
    expect(await bodies(next, "kept")).toEqual(["kept words", "more"]);
    await next.close();
  });

  test("keeps what comes while it is made anew", async () => {
    const store = await open();
    await say(store, 1);
    await store.forget("nobody");
    await Promise.all([say(store, 2), store.tidy(0), say(store, 3)]);
    await kill(store);
    const next = await open();
    expect(await bodies(next)).toEqual(["1", "2", "3"]);
    await next.close();
  });

  test("is readable by its owner alone", async () => {
    const store = await open();
    expect(statSync(path).mode & 0o077).toBe(0);
    await store.close();
  });
});

describe("a code", () => {
  test("is found once, by one of two who ask at the same time, and never after a restart", async () => {
    const store = await open();
    await store.keepCode("digest", { room: "r", seq: 1 }, 1000);
    const both = await Promise.all([store.takeCode("digest", 5), store.takeCode("digest", 5)]);
    expect(both.filter(Boolean)).toEqual([{ room: "r", seq: 1 }]);
    await kill(store);
    const next = await open();
    expect(await next.takeCode("digest", 5)).toBe(null);
    await next.close();
  });

  test("is there after a restart until it ends", async () => {
    const store = await open();
    await store.keepCode("digest", { room: "r", seq: 1 }, 1000);
    await kill(store);
    const next = await open();
    expect(await next.takeCode("digest", 1000)).toBe(null);
    expect(await next.takeCode("digest", 999)).toEqual({ room: "r", seq: 1 });
    await next.close();
  });
});

describe("the lines of a file", () => {
  const change = (body: string): Change => ({
    op: "append",
    room: "r",
    stored: { seq: 1, at: 0, from: "h", n: 1, kind: "entry", body },
  });

  test("are read as they were written, whatever they hold", () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.string(), { minLength: 1 })), (groups) => {
        const written = groups.map((group) => linesOf(group.map(change))).join("");
        expect(readLines(Buffer.from(written))).toEqual({
          changes: groups.flat().map(change),
          bytes: Buffer.byteLength(written),
        });
      }),
    );
  });

  test("of a group that was torn in its middle count up to the tear, whatever of the rest got through", () => {
    const sound = linesOf([change("1")]);
    const torn = linesOf([change("2"), change("3"), change("4")]).replace('"body":"3"', "\0".repeat(10));
    const read = readLines(Buffer.from(sound + torn));
    expect(read.changes).toEqual([change("1"), change("2")]);
    expect(() => readLines(Buffer.from(sound + torn + linesOf([change("5")])))).toThrow(/damaged/);
  });

  test("that are not ours are no file of ours", async () => {
    appendFileSync(path, "hello\n00000000 [0,1]\n");
    expect(readLines(readFileSync(path)).changes).toEqual([]);
  });
});
