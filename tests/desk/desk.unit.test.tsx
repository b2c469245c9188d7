// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { bodiesFor, type KeptEnd } from "../../src/cobrowse/client/index.ts";
import { kinds } from "../../src/cobrowse/protocol/kinds.ts";
import { createDeskRooms } from "../../src/desk/desk-rooms.ts";
import { createFollow } from "../../src/desk/follow.ts";
import type { KeptRoom } from "../../src/desk/kept-rooms.ts";
import { Desk } from "../../src/desk/screens/index.ts";
import { journalOf, type Session } from "../../src/session/index.ts";
import { at } from "../session/drive.ts";
import { createFakeRelay } from "./fake-relay.ts";
import { guide, texts, walkTo } from "./followed.ts";

const asked = walkTo("ice-bin.look");
const measuring = walkTo("flow-test.run");

let relay: ReturnType<typeof createFakeRelay>;
let storage: KeptRoom[];
let carried: string[];
let token: string | null;
beforeEach(() => {
  relay = createFakeRelay();
  storage = [];
  carried = [];
  token = "a.b.c";
});

/** Lets promises that are already settled have their say, and whatever they draw. */
const settle = () =>
  act(async () => {
    for (let turn = 0; turn < 40; turn += 1) await Promise.resolve();
  });

/** A desk in the document, on the fake relay, with what a hand and an eye can do to it. */
async function open() {
  const root = document.createElement("div");
  document.body.replaceChildren(root);
  let keys = 0;
  let timers: (() => void)[] = [];
  const desk = createDeskRooms({
    guide: { texts, follow: createFollow(guide, texts, async () => {}) },
    dial: relay.dial,
    kept: {
      read: () => structuredClone(storage),
      write: (rooms) => {
        storage = structuredClone([...rooms]);
      },
    },
    token: async () => token,
    now: () => 1_000_000,
    clock: () => at(60),
    after: (_, work) => {
      timers.push(work);
      return () => {
        timers = timers.filter((one) => one !== work);
      };
    },
    newKey: () => `room-${keys++}`,
    draw: () => draw(),
  });
  const parts = { canLookUp: false, findModel: vi.fn(), partsFor: vi.fn() };
  const draw = () =>
    render(
      <Desk
        desk={desk}
        texts={texts}
        parts={parts}
        picture={({ id }) => <img alt={id} />}
        clock={() => at(60)}
      />,
      root,
    );
  await act(draw);
  await settle();
  const all = (selector: string) => [...root.querySelectorAll<HTMLElement>(selector)];
  const nameOf = (one: Element) => one.getAttribute("aria-label") ?? one.textContent?.trim() ?? "";
  const button = (name: string | RegExp) => {
    const found = all("button").find((one) =>
      typeof name === "string" ? nameOf(one) === name : name.test(nameOf(one)),
    );
    if (!found) throw new Error(`No button ${name} among ${all("button").map(nameOf).join(" | ")}`);
    return found;
  };
  const type = (label: string, text: string) => {
    const named = all("label")
      .find((one) => one.textContent?.startsWith(label))
      ?.querySelector("input");
    const input = (named ?? all("input").find((one) => nameOf(one) === label)) as HTMLInputElement;
    input.value = text;
    return act(() => void input.dispatchEvent(new Event("input", { bubbles: true })));
  };
  return {
    desk,
    root,
    all,
    type,
    text: () => root.textContent ?? "",
    tap: async (name: string | RegExp) => {
      await act(() => button(name).click());
      await settle();
    },
    send: async (selector: string) => {
      const form = root.querySelector(selector) as HTMLFormElement;
      await act(() => void form.dispatchEvent(new Event("submit", { bubbles: true, cancelable: true })));
      await settle();
    },
    mirror: () => root.querySelector(".mirrored")?.shadowRoot as ShadowRoot,
  };
}

type Opened = Awaited<ReturnType<typeof open>>;

async function join(page: Opened): Promise<void> {
  await page.type("Code", "7kq2-m4xc");
  await page.send(".join");
}

/** What the householder's device shares. */
async function share(session: Session): Promise<void> {
  for (const body of bodiesFor(journalOf(session.log), carried)) {
    carried.push(body);
    await act(() => relay.does("entry", body));
  }
  await settle();
}

async function meet(session: Session): Promise<Opened> {
  const page = await open();
  await join(page);
  await act(() => relay.does("admit", "a1"));
  await share(session);
  return page;
}

const puts = () => relay.sent.filter(({ type }) => type === "put").map(({ kind, body }) => [kind, body]);

describe("joining", () => {
  test("sends the code and the shop's token, and waits to be let in", async () => {
    const page = await open();
    await join(page);
    expect(relay.sent[0]).toEqual({ type: "join", v: 1, code: "7KQ2M4XC", token: "a.b.c" });
    expect(page.text()).toContain("Waiting to be let in");
    expect(page.text()).toContain("Until they do, you see nothing of theirs");
    expect(page.text()).toContain("You've joined.");
  });

  test.each([
    ["no-such-code", /No phone shows this code/],
    ["no-such-token", /sign-in isn't taken/],
    ["locked", /locked for a while/],
    ["too-often", /too quick/],
    ["full", /all the people it can take/],
    ["malformed", /relay said no/],
  ])("says in words why it was refused: %s", async (why, words) => {
    relay.refuse(why);
    const page = await open();
    await join(page);
    expect(page.text()).toMatch(words);
    expect(page.all(".conv")).toHaveLength(0);
  });

  test("asks no relay with a code that can't be one, or without a token", async () => {
    const page = await open();
    await page.type("Code", "7kq2");
    await page.send(".join");
    expect(page.text()).toContain("A code has 8 letters and digits");
    token = null;
    await join(page);
    expect(page.text()).toContain("couldn't get your sign-in");
    expect(relay.sent).toEqual([]);
  });
});

describe("their screen", () => {
  test("is shown as they see it, and not one of its actions can be called from it", async () => {
    for (const session of [asked, measuring]) {
      relay = createFakeRelay();
      carried = [];
      const page = await meet(session);
      const before = page.mirror().innerHTML;
      expect(page.root.querySelector(".mirrored")?.hasAttribute("inert")).toBe(true);
      expect(page.mirror().querySelectorAll("button").length).toBeGreaterThan(3);
      const sentBefore = puts().length;
      // As if `inert` were nothing to this browser.
      for (let round = 0; round < 2; round++)
        for (const one of page.mirror().querySelectorAll<HTMLElement>("button, input, summary, form"))
          await act(() => {
            one.click();
            one.dispatchEvent(new Event("submit", { bubbles: true, cancelable: true }));
          });
      await settle();
      expect(puts()).toHaveLength(sentBefore);
      expect(page.mirror().querySelector("h2")?.textContent).toBe(/<h2[^>]*>([^<]*)/.exec(before)?.[1]);
    }
  });

  test("moves on with what they answer", async () => {
    const page = await meet(asked);
    expect(page.mirror().querySelector("h2")?.textContent).toBe("What do you see at the ice bin?");
    await share(measuring);
    expect(page.mirror().querySelector("h2")?.textContent).toBe("How much water comes out of the dispenser?");
    expect(page.text()).toContain("No model yet: now at “How much water comes out of the dispenser?”");
  });

  test("has the answer ringed that is pointed at, and says what that is worth", async () => {
    const page = await meet(asked);
    await page.tap("Point at it: It wasn't all the way in");
    const ringed = [...page.mirror().querySelectorAll(".pointed")].map((one) => one.textContent);
    expect(ringed).toEqual(["It wasn't all the way in"]);
    expect(page.text()).toContain(
      "You're pointing at “It wasn't all the way in”. Only they can tap it, and only they can pass a gate.",
    );
  });
});

describe("what an agent sends", () => {
  test("is a suggestion, whatever they do; no entry, no reading, no gate", async () => {
    const page = await meet(asked);
    await page.type("Write to them", "Hello, I'm here");
    await page.send(".write");
    await page.tap("Point at it: It sits right and has room");
    await page.tap("Propose: It sits right and has room");
    await page.type("Why?", "You told me so");
    await page.send(".asked");
    await page.tap(/^Small tap|^Power|Shows which|About/);
    await page.send(".asked");
    await page.tap("Call an engineer");
    await page.send(".asked");
    await page.type("Find the question", "settings usual");
    await page.tap(/As usual/);
    await page.type("Model number on their plate", "WXM 431AB8/1");
    await page.send(".suggest details form");
    await page.tap(/WXM 431AB8\/1/);
    await page.tap(/^Leave/);
    const sent = puts();
    expect(sent.map(([kind]) => kind)).toEqual([
      ...["line", "point", "propose", "propose", "propose", "told", "correct", "leave"],
    ]);
    expect(JSON.parse(sent[2]?.[1] ?? "")).toMatchObject({ turn: "ice-bin.look", why: "You told me so" });
    const agents = [...kinds.carried.agent, ...kinds.steering.agent];
    for (const [kind] of sent) expect(agents).toContain(kind);
  });

  test("is nothing about a reading: its numbers are theirs to measure", async () => {
    const page = await meet(measuring);
    expect(page.text()).toContain("Only they can confirm, measure or wait.");
    expect(page.all(".choices li")).toHaveLength(0);
  });

  test("says what became of it", async () => {
    const page = await meet(asked);
    await page.tap("Point at it: It sits right and has room");
    expect(page.text()).toContain("sent, they haven't said yet");
    const { length } = puts();
    expect(length).toBe(1);
    // opened, joined, admit, the journal's entries, the point.
    await act(() => relay.does("heard", JSON.stringify({ to: 3 + carried.length + 1, is: "declined" })));
    await settle();
    expect(page.text()).toContain("they said no");
  });

  test("waits here while they have paused, and says so", async () => {
    const page = await meet(asked);
    await act(() => relay.does("pause"));
    await page.type("Write to them", "One moment");
    await page.send(".write");
    expect(page.text()).toContain("What you send waits here until they go on.");
    expect(page.text()).toContain("waits to be sent");
    expect(page.all(".said li.waiting")).toHaveLength(1);
    await act(() => relay.does("resume"));
    await settle();
    expect(page.all(".said li.waiting")).toHaveLength(0);
    expect(puts().at(-1)).toEqual(["line", "One moment"]);
  });

  test("waits here while the line is down", async () => {
    const page = await meet(asked);
    await act(() => relay.drop());
    await settle();
    await page.type("Write to them", "Still there?");
    await page.send(".write");
    expect(page.text()).toContain("No connection. What you send waits here.");
    expect(page.text()).toContain("waits to be sent");
  });
});

describe("a reload", () => {
  test("comes back to the room, and to what was being typed", async () => {
    const page = await meet(asked);
    await page.type("Write to them", "half a sen");
    page.desk.close();
    const kept: KeptEnd | undefined = storage[0]?.end;
    expect(kept?.place).toEqual({ room: "r", peer: "a1", secret: "s" });
    const again = await open();
    await again.tap(/What do you see at the ice bin/);
    expect(relay.sent.at(-1)).toMatchObject({ type: "return", secret: "s", after: 0 });
    expect(again.all("input").map((one) => (one as HTMLInputElement).value)).toContain("half a sen");
    expect(again.mirror().querySelector("h2")?.textContent).toBe("What do you see at the ice bin?");
  });

  test("does not come back to a room that was left", async () => {
    const page = await meet(asked);
    await page.tap(/^Leave/);
    expect(storage).toEqual([]);
    expect(page.all(".conv")).toHaveLength(0);
  });
});
