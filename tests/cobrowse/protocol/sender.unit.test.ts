import { describe, expect, test } from "vitest";
import {
  acknowledged,
  createSender,
  delayed,
  due,
  enqueue,
  nextDue,
  reconnected,
  released,
  type Sender,
} from "../../../src/cobrowse/protocol/index.ts";

/** A sender with so many messages, their bodies their numbers. */
const with_ = (count: number) =>
  Array.from({ length: count }).reduce<Sender>(
    (sender, _, place) => enqueue(sender, "entry", `${place + 1}`),
    createSender("carried", 0),
  );
const numbers = ([, puts]: ReturnType<typeof due>) => puts.map(({ n }) => n);

describe("a sender", () => {
  test("numbers what it says from 1 and sends it once", () => {
    const [sender, puts] = due(with_(2), 0);
    expect(puts).toEqual([
      { type: "put", lane: "carried", n: 1, kind: "entry", body: "1" },
      { type: "put", lane: "carried", n: 2, kind: "entry", body: "2" },
    ]);
    expect(numbers(due(sender, 1))).toEqual([]);
  });

  test("repeats all that was not acknowledged, ever more rarely", () => {
    let [sender] = due(with_(2), 0);
    const at: number[] = [];
    for (let now = 0; now <= 200_000; now += 100) {
      const next = due(sender, now);
      if (next[1].length) at.push(now);
      expect([[], [1, 2]]).toContainEqual(numbers(next));
      [sender] = next;
    }
    expect(at).toEqual([2000, 6000, 14_000, 30_000, 60_000, 90_000, 120_000, 150_000, 180_000]);
  });

  test("stops when it is acknowledged, which means all before as well", () => {
    const [sent] = due(with_(3), 0);
    const sender = acknowledged(sent, 2, 100);
    expect(sender.queue.map(({ n }) => n)).toEqual([3]);
    expect(acknowledged(sender, 1, 200)).toEqual(sender);
    expect(nextDue(acknowledged(sender, 3, 200), 200)).toBe(null);
  });

  test("on a new line sends what the relay does not have, at once", () => {
    const [sent] = due(with_(3), 0);
    expect(numbers(due(reconnected(sent, 1, 50), 50))).toEqual([2, 3]);
  });

  test("that was taken up from an older state gives no number again that the relay has kept", () => {
    const sender = reconnected(createSender("carried", 0), 4, 0);
    expect(enqueue(sender, "entry", "x").queue).toMatchObject([{ n: 5 }]);
  });

  test("sends a long queue at a pace that the relay takes: never more than 20 at once, 5 a second", () => {
    let sender = with_(200);
    const sent: number[] = [];
    for (let now = 0; sender.queue.length > 0 && now < 300_000; now += 50) {
      const [next, puts] = due(sender, now);
      sent.push(...puts.map(() => now));
      const last = puts.at(-1);
      sender = last ? acknowledged(next, last.n, now) : next;
    }
    expect(sent).toHaveLength(200);
    for (const from of sent) {
      expect(sent.filter((at) => at >= from && at < from + 1000).length).toBeLessThanOrEqual(20);
      expect(sent.filter((at) => at >= from && at < from + 10_000).length).toBeLessThanOrEqual(60);
    }
  });

  test("has eight messages on their way at most", () => {
    expect(numbers(due(with_(20), 0))).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test("that has to wait says nothing for a while, and goes on when it may", () => {
    const [sent] = due(with_(2), 0);
    const waiting = delayed(sent, 100);
    expect(numbers(due(waiting, 1000))).toEqual([]);
    expect(nextDue(waiting, 1000)).toBe(2100);
    expect(numbers(due(waiting, 2100))).toEqual([1, 2]);
    expect(numbers(due(released(waiting), 1000))).toEqual([1, 2]);
    // Each message that was on its way is answered with 'wait'; they are one wait.
    expect(delayed(waiting, 200)).toEqual(waiting);
  });

  test("is plain data, so that it can be kept and taken up again", () => {
    const [sender] = due(with_(2), 0);
    expect(JSON.parse(JSON.stringify(sender))).toEqual(sender);
  });
});
