import { describe, expect, test } from "vitest";
import { emptyRoom, type SharedRoom } from "../../src/cobrowse/client/index.ts";
import { type RoomState, roomLineOf, sorted } from "../../src/desk/board/index.ts";
import { record, type Session, startSession, stopBy } from "../../src/session/index.ts";
import { at, follow, healthy, take } from "../session/drive.ts";
import { followedOf, guide, texts, walkTo } from "./followed.ts";

const inRoom: SharedRoom = { ...emptyRoom, people: [{ id: "a1", name: "Ash", is: "in" }] };

const line = (session: Session | null, more: Partial<RoomState> = {}) => {
  const view = session && followedOf(session).view;
  return roomLineOf({ room: inRoom, me: "a1", session, view, over: null, now: 0, ...more }, texts);
};

const asked = walkTo("ice-bin.look");

describe("a conversation in the list", () => {
  test("says that the agent waits to be let in, and that nothing was shared yet", () => {
    const asking = { ...emptyRoom, people: [{ id: "a1", name: "Ash", is: "asking" as const }] };
    expect(line(null, { room: asking })).toEqual({
      is: "asking",
      name: "No model yet",
      waits: "Waiting to be let in",
      share: 0,
    });
    expect(line(null).waits).toBe("They haven't shared anything yet");
  });

  test("says the open question, how far it is, and the model once that is known", () => {
    const early = line(walkTo("opening.supply"));
    const late = line(walkTo("flow-test.run"));
    expect(line(asked)).toMatchObject({ is: "open", waits: "What do you see at the ice bin?" });
    expect(early.share).toBeGreaterThan(0);
    expect(late.share).toBeGreaterThan(early.share);
    expect(late.share).toBeLessThan(1);
    expect(line(startSession(guide, at(0), "WXM 431AB8/1")).name).toBe("WXM 431AB8/1");
  });

  test("says how long a wait still takes, by the desk's own clock", () => {
    let session = startSession(guide, at(0));
    for (const way of [{ "flow-test.run": "cannot" }, {}]) {
      for (session = startSession(guide, at(0)); !followedOf(session).view.turn?.wait; ) {
        const { turn, kind } = followedOf(session).view.turn ?? {};
        if (!turn || kind === "ending") break;
        const answers = { ...healthy, ...way };
        session = take(
          session,
          answers[turn as keyof typeof answers] ?? (kind === "gate" ? "ready" : "not-sure"),
        );
      }
      if (followedOf(session).view.turn?.wait) break;
    }
    const until = Date.parse(followedOf(session).view.turn?.wait?.until ?? "");
    const left = (minutes: number) => line(session, { now: until - minutes * 60_000 }).waits;
    expect(left(65)).toBe("Waiting: 1 h 5 min to go");
    expect(left(20)).toBe("Waiting: 20 min to go");
    expect(left(-1)).toBe("The wait is over");
  });

  test("says that they have paused, that it has ended, and that the agent was not let in", () => {
    expect(line(asked, { room: { ...inRoom, isPaused: true } }).is).toBe("paused");
    expect(line(asked, { room: { ...inRoom, isEnded: true } })).toMatchObject({ is: "over", waits: "Ended" });
    expect(line(asked, { over: "replaced" }).waits).toBe("Open in another window");
    expect(line(asked, { over: "malformed" }).waits).toBe("The connection was refused");
    const away = { ...emptyRoom, people: [{ id: "a1", name: "Ash", is: "gone" as const }] };
    expect(line(null, { room: away }).waits).toBe("They didn't let you in");
  });

  test("says a danger whatever else is so, and comes first for it", () => {
    const stopped = line(stopBy(asked, "burning", at(30)), {
      room: { ...inRoom, isPaused: true, isEnded: true },
    });
    expect(stopped.is).toBe("danger");
    expect(stopped.waits).toMatch(/^DANGER: /);
    const rooms = [line(asked), line(null, { over: "ended" }), stopped, line(null)].map((one) => ({
      line: one,
    }));
    expect(sorted(rooms).map((one) => one.line.is)).toEqual(["danger", "open", "asking", "over"]);
  });
});

test("a walk that was stopped stays so on the desk, and helps are no danger", () => {
  const helped = record(asked, { type: "help-asked", at: at(40) }).session;
  expect(line(helped).is).toBe("waiting");
  expect(line(follow(startSession(guide, at(0)), healthy, "opening.supply")).is).toBe("open");
});
