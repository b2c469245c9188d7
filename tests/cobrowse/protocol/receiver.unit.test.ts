import { describe, expect, test } from "vitest";
import { createReceiver, receive, upTo } from "../../../src/cobrowse/protocol/index.ts";

describe("a receiver", () => {
  test("takes what comes next, and passes over what it has", () => {
    const first = receive(createReceiver(), 1, 0);
    expect(first).toMatchObject({ take: true, ask: false, receiver: { last: 1 } });
    expect(receive(first.receiver, 1, 0)).toMatchObject({ take: false, ask: false, receiver: { last: 1 } });
  });

  test("asks for what it missed instead of taking what comes too early", () => {
    expect(receive(createReceiver(3), 6, 0)).toMatchObject({ take: false, ask: true, receiver: { last: 3 } });
  });

  test("asks once, and again when nothing has come of it", () => {
    const { receiver } = receive(createReceiver(3), 6, 0);
    expect(receive(receiver, 7, 1000).ask).toBe(false);
    expect(receive(receiver, 7, 2000).ask).toBe(true);
    const { receiver: further } = receive(receiver, 4, 1000);
    expect(receive(further, 7, 1001).ask).toBe(true);
  });

  test("asks when the relay has more than it was sent", () => {
    expect(upTo(createReceiver(3), 3, 0).ask).toBe(false);
    expect(upTo(createReceiver(3), 4, 0)).toMatchObject({ ask: true, take: false });
  });
});
