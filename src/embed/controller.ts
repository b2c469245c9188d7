import {
  changeAnswer,
  holdTimes,
  inWords,
  isStopped,
  type LogEvent,
  memoryOf,
  metaOf,
  putBack,
  record,
  type Session,
  scenariosAhead,
  settle,
  standingOf,
  stopBy,
} from "../session/index.ts";
import { machineTurn, machineView, type Notice, viewOf } from "../turn/index.ts";
import { createAhead } from "./ahead.ts";
import { lastActIn, putAside, readAside } from "./coming-back.ts";
import type { Exclusive } from "./exclusive.ts";
import { createGoingOn } from "./going-on.ts";
import { createGreeter } from "./greeter.ts";
import { Keeper } from "./keeper.ts";
import { offersAside, withoutCarried } from "./notices.ts";
import { passCode } from "./pass-code.ts";
import type { Controller, Surroundings } from "./surroundings.ts";
import { couldAtOnce, whenLoaded } from "./when-loaded.ts";
import { createWish } from "./wish.ts";

/**
 * Ties one session to its surroundings: every act is recorded, kept and shown, in this order. Several tabs share one
 * journal: each act first takes over what another tab has kept, and is tried on that. A danger waits for nothing.
 */
export function createController(around: Surroundings): Controller {
  const { texts, store, stop, now } = around;
  const exclusively: Exclusive = (work) =>
    (around.exclusively ?? ((inside) => inside()))(() => whenLoaded(work, around.load, exclusively));
  const newId = around.newId ?? (() => Math.random().toString(36).slice(2, 12));
  const keeper = new Keeper({ ...around, newId });
  const ahead = createAhead(texts, now, around.whenIdle, around.rehearse);
  const greeter = createGreeter(keeper, texts, (told) => actOnScreen(() => move(keeper.tell(told))));
  const wish = createWish();
  const goingOn = createGoingOn({ ...around, keeper, move, show });
  const opened = pass(keeper.session);
  if (opened !== keeper.session) keeper.keep(opened);
  show();

  function show(): void {
    const { session } = keeper;
    const notices = isStopped(session) ? withoutCarried(keeper.notices) : keeper.notices;
    const near = scenariosAhead(session);
    if (near.length > 0) void around.nearing?.(near).then(ahead.goOn);
    const [aside] = notices.some(offersAside) ? readAside(around, show) : [];
    const view = keeper.isOtherMachine
      ? machineView(session, keeper.about ?? "", around.model ?? "", texts)
      : viewOf(session, texts, now(), notices, aside ? lastActIn(standingOf(aside).log) : undefined);
    around.show(greeter.view(view));
    for (const one of [ahead, wish]) one.look(session, view.turn);
    goingOn.look();
    around.shown?.(session);
  }

  const follow = () => whenLoaded(() => keeper.follow() && show(), around.load);

  function pass(next: Session): Session {
    return passCode(next, around.canLookUp?.() ?? true, now());
  }

  function move(led: Session, before = keeper.session, told = overIn(led), held: number[] = []): void {
    const next = pass(led);
    if (next !== keeper.session) {
      keeper.forgetNotices();
      keeper.notices = [...keeper.notices, ...told];
      keeper.keep(next, held);
    }
    show();
    if (next !== before && metaOf(next).outcome && !metaOf(before).outcome) around.ended(next);
  }

  /** Whether a wait has ended that is on screen, and another question has come by itself. */
  function overIn(led: Session): Notice["id"][] {
    const since = led.log.events.slice(keeper.session.log.events.length);
    return since.some(({ type }) => type === "wait-ended") && !metaOf(led).outcome ? ["wait-ended"] : [];
  }

  /** Another tab was first: what was tapped answered a screen that is gone. */
  function refuse(): void {
    keeper.notices = keeper.notices.map((notice) => (notice === "other-tab" ? "tap-not-taken" : notice));
    show();
  }

  /** Does an act that is meant for exactly what is on screen now. */
  function actOnScreen(work: () => void): void {
    const { events } = keeper.session.log;
    exclusively(() => (keeper.follow() || events !== keeper.session.log.events ? refuse() : work()));
  }

  // A wait that ran out while the phone slept ends first; an act meant for it then finds another turn and is refused.
  const tryOn = (from: Session, event: LogEvent) => {
    const held = heldAt(from, now());
    const led = wish.led(held, event) ?? ahead.led(held, event);
    const { session, refusal } = led ? { session: led, refusal: null } : record(held, event);
    return refusal ? session : putBack(session, keeper.held, event.at);
  };
  const heldAt = (session: Session, at: string) => settle(holdTimes(session, at), at);

  const act = (event: LogEvent) => whenLoaded(() => actAtOnce(event), around.load);

  function actAtOnce(event: LogEvent): void {
    const shown = keeper.session;
    let known: Session | undefined;
    const tried = () => {
      known ??= tryOn(shown, event);
      return known;
    };
    const isStop = () => isStopped(tried()) && !isStopped(shown);
    // Asked for first: what the tap leads to is worked out while the browser fetches the lock.
    exclusively(() => isStop() || actOn(shown, event, tried()));
    if (isStop()) stopAtOnce(event, tried());
    else if (keeper.session === shown) viewOf(pass(tried()), texts, now(), []);
  }

  /** Takes an act that was tapped on one session, and has been tried on it, on the session as it is by now. */
  function actOn(shown: Session, event: LogEvent, tried: Session): void {
    const isElsewhere = keeper.follow() && metaOf(keeper.session).turn !== metaOf(shown).turn;
    if (isElsewhere || keeper.isOtherMachine) {
      refuse();
      return;
    }
    const next = keeper.session === shown ? tried : tryOn(keeper.session, event);
    // Whoever names a machine on this page need not be asked which one it is about.
    if (event.type === "model-given" && next !== keeper.session)
      keeper.consent = { at: now(), model: around.model };
    move(next);
  }

  /** No lock may hold up a danger; the mark stands whatever becomes of the log. */
  function stopAtOnce(event: LogEvent, tried: Session): void {
    const before = keeper.session;
    keeper.markStop(tried);
    let next = tried;
    const takeNews = () => {
      if (keeper.takeNews()) next = record(keeper.session, event).session;
    };
    // Nor may what the news would need to be loaded.
    if (!couldAtOnce(takeNews)) keeper.putNewsAside();
    move(stopBy(next, memoryOf(tried).danger ?? "not-sure", event.at), before);
  }

  function answerForMachine(answer: string): void {
    if (!keeper.isOtherMachine) refuse();
    else if (answer === "kept") {
      keeper.consent = { at: now(), model: around.model };
      keeper.keep(keeper.session);
      show();
    } else {
      putAside(store, keeper.journal);
      keeper.notices = withoutCarried(keeper.notices);
      move(keeper.begin(), keeper.session, ["set-aside"]);
    }
  }

  function restart(at: string, isStopSeen: boolean): void {
    keeper.follow();
    // A stop that was reported meanwhile, here or elsewhere, was not seen when this was tapped.
    if (isStopped(keeper.session) && !isStopSeen) {
      refuse();
      return;
    }
    stop.clear();
    store.clear();
    move(keeper.startAgain(at));
  }

  function change(index: number): void {
    actOnScreen(() => {
      if (greeter.again()) return show();
      const { session, held } = changeAnswer(keeper.session, index, now());
      move(session, keeper.session, [], held);
    });
  }

  return {
    ...{ about: () => keeper.about, journal: () => keeper.journal, lookNext: wish.want, follow },
    forget: (clear) => exclusively(() => goingOn.forget(clear)),
    actions: {
      answer: (turn, answer, words) =>
        turn === machineTurn
          ? actOnScreen(() => answerForMachine(answer))
          : greeter.take(turn, answer, words) ||
            act({ type: "answered", turn, answer, ...inWords(words), at: now() }),
      confirmGate: (turn, items) => act({ type: "answered", turn, answer: "ready", items, at: now() }),
      measure: (turn, reading, words) =>
        act({
          type: "measured",
          turn,
          reading: structuredClone(reading) as never,
          ...inWords(words),
          at: now(),
        }),
      giveModel: (turn, code, typed) => act({ type: "model-given", turn, code, typed, at: now() }),
      tell: (told) => exclusively(() => move(keeper.tell(told))),
      change,
      retypeModel: () => {
        const index = keeper.session.log.events.map(({ type }) => type).lastIndexOf("model-given");
        if (index >= 0) change(index);
      },
      restart: () => {
        const [at, isStopSeen] = [now(), isStopped(keeper.session)];
        exclusively(() => restart(at, isStopSeen));
      },
      goOn: () => actOnScreen(goingOn.goOn),
      reportDanger: (danger) => act({ type: "danger-reported", danger, at: now() }),
      askForHelp: () => act({ type: "help-asked", at: now() }),
      reportIce: () => act({ type: "ice-returned", at: now() }),
      reportTrouble: () => act({ type: "trouble-returned", at: now() }),
    },
    takeEarly: (events) => new Promise((tell) => exclusively(() => tell(keeper.takeEarly(events, move)))),
    comeBack: () =>
      exclusively(() => {
        keeper.follow();
        const at = now();
        move(record(heldAt(keeper.session, at), { type: "session-resumed", at }).session);
      }),
    setOffline: (isOffline) => {
      const others = keeper.notices.filter((notice) => notice !== "offline");
      if (isOffline === others.length < keeper.notices.length) return;
      keeper.notices = isOffline ? [...others, "offline"] : others;
      show();
    },
    tick: () => {
      const mark = stop.read();
      // A storage that was full when the danger was reported may have room by now.
      if (mark) stop.keep(mark);
      follow();
      const isInMemory = keeper.notices.includes("memory-only");
      if (heldAt(keeper.session, now()) === keeper.session && !isInMemory) return;
      exclusively(() => {
        keeper.follow();
        // There may be room by now.
        if (isInMemory) keeper.keep(keeper.session);
        move(heldAt(keeper.session, now()));
      });
    },
  };
}
