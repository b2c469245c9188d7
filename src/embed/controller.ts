import { type Charts, createCharts, type Flow } from "../flow/index.ts";
import {
  type Actions,
  changeAnswer,
  type LogEvent,
  memoryOf,
  metaOf,
  type Notice,
  parseLog,
  record,
  resume,
  type Session,
  settle,
  startSession,
  type Texts,
  type View,
  viewOf,
} from "../session/index.ts";
import type { LogStore } from "./log-store.ts";
import type { StopMark } from "./stop-mark.ts";

/** What surrounds a session: texts, storage, a clock, and who wants to see the result. */
export type Surroundings = {
  flow: Flow;
  /** Made ready beforehand, where that is worth a task of its own. */
  charts?: Charts;
  texts: Texts;
  store: LogStore;
  /** The mark that stops this session in every tab; it lies apart from the log. */
  stop?: { read(): StopMark | null; keep(mark: StopMark): void; clear(): void };
  model: string | null;
  now(): string;
  show(view: View): void;
  /** Told once, when a person's own act (not a reload) has led to an ending. */
  ended(session: Session): void;
};

export type Controller = {
  actions: Actions;
  /** Looks at the clock again: a wait may be over. */
  tick(): void;
  /** Says, or no longer says, that there is no connection. */
  setOffline(isOffline: boolean): void;
};

/** Ties one session to its surroundings: every act is recorded, kept and shown, in this order. */
export function createController(around: Surroundings): Controller {
  const { flow, texts, store, now, charts = createCharts(flow) } = around;
  let notices: Notice["id"][] = [];
  let session = stopWhereMarked(open());
  show();

  function open(): Session {
    const kept = parseLog(store.read());
    if (!kept || kept.events.length === 0) return startSession(flow, now(), around.model, charts);
    const { session: back, dropped } = resume(flow, kept, now(), charts);
    const isWaitOver = back.log.events.some(
      ({ type }, place) => type === "wait-ended" && place >= kept.events.length,
    );
    // What this flow no longer takes is not lost: support can still read it.
    if (dropped > 0) store.setAside(kept);
    notices = [dropped > 0 ? "shortened" : isWaitOver ? "wait-over" : "welcome-back"];
    keep(back);
    return back;
  }

  function stopWhereMarked(opened: Session): Session {
    const mark = around.stop?.read();
    if (!mark) return opened;
    const report = (danger: string) => record(opened, { type: "danger-reported", danger, at: now() });
    const known = report(mark.danger);
    const next = known.refusal ? report("not-sure").session : known.session;
    keep(next);
    return next;
  }

  function keep(next: Session): void {
    const kept = store.write(next.log);
    if (!kept && !notices.includes("memory-only")) notices = [...notices, "memory-only"];
  }

  function show(): void {
    around.show(viewOf(session, texts, now(), notices));
  }

  function move(next: Session): void {
    const before = session;
    session = next;
    if (next !== before) {
      notices = notices.filter((notice) => notice === "memory-only" || notice === "offline");
      keep(next);
    }
    show();
    const { outcome } = metaOf(next);
    if (outcome === "stopped") around.stop?.keep({ danger: memoryOf(next).danger ?? "not-sure", at: now() });
    if (next !== before && metaOf(next).outcome && !metaOf(before).outcome) around.ended(next);
  }

  // A wait that ran out while the phone slept ends first; an act meant for it then finds another turn and is refused.
  const act = (event: LogEvent) => move(record(settle(session, event.at), event).session);

  return {
    actions: {
      answer: (turn, answer) => act({ type: "answered", turn, answer, at: now() }),
      confirmGate: (turn, items) => act({ type: "answered", turn, answer: "ready", items, at: now() }),
      measure: (turn, reading) =>
        act({ type: "measured", turn, reading: structuredClone(reading) as never, at: now() }),
      giveModel: (turn, code, typed) => act({ type: "model-given", turn, code, typed, at: now() }),
      change: (index) => move(changeAnswer(session, index, now())),
      restart: () => {
        around.stop?.clear();
        store.clear();
        move(startSession(flow, now(), around.model, charts));
      },
      reportDanger: (danger) => act({ type: "danger-reported", danger, at: now() }),
      askForHelp: () => act({ type: "help-asked", at: now() }),
      reportIce: () => act({ type: "ice-returned", at: now() }),
    },
    setOffline: (isOffline) => {
      if (isOffline === notices.includes("offline")) return;
      notices = isOffline ? [...notices, "offline"] : notices.filter((notice) => notice !== "offline");
      show();
    },
    tick: () => {
      const next = settle(session, now());
      if (next !== session) move(next);
    },
  };
}
