import { describe, expect, test } from "vitest";
import { createSender } from "../../src/cobrowse/protocol/index.ts";
import { codeFrom, readCode, shownCode } from "../../src/cobrowse/protocol/room/index.ts";
import { codeIn } from "../../src/desk/code.ts";
import { createDial } from "../../src/desk/dial.ts";
import { createKeptRooms, type KeptRoom } from "../../src/desk/kept-rooms.ts";
import { readDeskOptions } from "../../src/desk/options.ts";
import { fetchToken, tokenIn } from "../../src/desk/token.ts";
import { tokenFor } from "../cobrowse/relay/agents.ts";

describe("a code that was typed", () => {
  test("is tried whenever the relay may know it, whatever stands between its characters", () => {
    const code = codeFrom(Uint8Array.of(1, 200, 33, 4, 250));
    for (const typed of [code, shownCode(code), ` ${code.toLowerCase()} `, code.split("").join(" ")])
      expect(readCode(codeIn(typed) ?? "")).toBe(code);
    // Crockford's look-alikes: I and L are 1, O is 0.
    expect(readCode(codeIn("IL0O-0000") ?? "")).toBe("11000000");
  });

  test.each(["", "ABCD", "ABCD-EFGHJ", "UUUU-UUUU", "ÄBCD-EFGH"])(
    "costs no try where it can't be one: %s",
    (typed) => {
      expect(codeIn(typed)).toBeNull();
    },
  );
});

describe("the tag's attributes", () => {
  const base = "https://shop.example/support/desk.html";
  const read = (given: Record<string, string>) =>
    readDeskOptions((name) => given[name] ?? null, "de", ["en-GB", "en-US"], base);

  test("name the relays that the shop lists; others than encrypted ones count on this machine alone", () => {
    const relay =
      "wss://one.example https://no.example ws://two.example ws://127.0.0.1:8787 wss://a@b.example";
    expect(read({ relay }).relays).toEqual(["wss://one.example/rooms", "ws://127.0.0.1:8787/rooms"]);
    expect(read({}).relays).toEqual([]);
  });

  test("ask for a token at the page's own address only, as its cookies go along", () => {
    expect(read({ "token-from": "/agent/token" }).tokenFrom).toBe("https://shop.example/agent/token");
    expect(read({ "token-from": "https://elsewhere.example/token" }).tokenFrom).toBeNull();
  });

  test("choose a language that there is", () => {
    expect(read({ language: "en-US" }).language).toBe("en-US");
    expect(read({}).language).toBe("en-GB");
  });
});

describe("a token", () => {
  const answering = (body: string, status = 200) => {
    const asked: RequestInit[] = [];
    const get = (async (_: unknown, settings: RequestInit) => {
      asked.push(settings);
      return new Response(body, { status });
    }) as typeof fetch;
    return { get, asked };
  };

  test("is asked for with the page's own cookies, and never taken from a cache", async () => {
    const { get, asked } = answering(`${tokenFor()}\n`);
    expect(await fetchToken("/token", get)).toBe(tokenFor());
    expect(asked[0]).toMatchObject({ credentials: "same-origin", cache: "no-store" });
  });

  test.each([
    ["<html>Sign in</html>", 200],
    ["", 200],
    [tokenFor(), 401],
    ["a.b.c".padEnd(3000, "c"), 200],
  ])("is none where something else comes back", async (body, status) => {
    expect(await fetchToken("/token", answering(body, status).get)).toBeNull();
  });

  test("of a page counts where it has the shape of one", () => {
    expect(tokenIn(tokenFor())).toBe(tokenFor());
    for (const odd of [null, 7, "", "a.b", {}]) expect(tokenIn(odd)).toBeNull();
  });
});

describe("rooms that a reload comes back to", () => {
  const storage = (text: string | null) => {
    let kept = text;
    return createKeptRooms(
      () =>
        ({
          getItem: () => kept,
          setItem: (_: string, next: string) => {
            kept = next;
          },
        }) as never,
    );
  };
  const room: KeptRoom = {
    key: "one",
    end: {
      place: { room: "r", peer: "a1", secret: "s" },
      senders: { carried: createSender("carried", 0), steering: createSender("steering", 0) },
    },
    drafts: { line: "half a sen" },
  };

  test("are those that were kept, with what was being typed", () => {
    const kept = storage(null);
    kept.write([room]);
    expect(kept.read()).toEqual([room]);
  });

  test.each(["null", "{", "[1]", '[{"key":"x"}]', `"${"x".repeat(3_000_000)}"`])(
    "are none where something else lies there",
    (text) => {
      expect(storage(text).read()).toEqual([]);
    },
  );

  test("are none where the browser denies its storage", () => {
    const denied = createKeptRooms(() => {
      throw new Error("denied");
    });
    expect(() => denied.write([room])).not.toThrow();
    expect(denied.read()).toEqual([]);
  });
});

test("a relay that the shop has not listed is never followed", () => {
  const dialled: string[] = [];
  const dial = createDial(["wss://one.example/rooms", "wss://two.example/rooms"], (address) => {
    dialled.push(address);
    return { close() {} } as WebSocket;
  });
  const on = { up() {}, text() {}, down() {} };
  for (const to of [undefined, "wss://two.example/rooms", "wss://evil.example/rooms"]) dial(on, to);
  expect(dialled).toEqual(["wss://one.example/rooms", "wss://two.example/rooms", "wss://one.example/rooms"]);
});
