import {
  type Guide,
  isStopped,
  type LogEvent,
  memoryOf,
  record,
  resume,
  type Session,
  startSession,
  stopBy,
  takeOver,
  waterLeftBy,
} from "../session/index.ts";
import { isOtherModel, type Notice } from "../turn/index.ts";
import { isPartOf, isTooOld, putAside } from "./coming-back.ts";
import type { LogStore } from "./log-store.ts";
import { type Consent, createSharedLog, type News } from "./shared-log.ts";
import type { StopMark } from "./stop-mark.ts";

/** Where a session is kept, and what is asked of it when it is come back to. */
export type Keeping = {
  guide: Guide;
  store: LogStore;
  /** The mark that stops this session in every tab; it lies apart from the log. */
  stop: { read(): StopMark | null; keep(mark: StopMark): void; clear(): void };
  /** A short name that no other write has. */
  newId(): string;
  /** The model that the page is about. */
  model: string | null;
  now(): string;
};

/** These stay until they no longer hold; all others are told once. */
const lasting: Notice["id"][] = ["memory-only", "offline"];

/** One tab's session and where it is kept; several tabs share one log. */
export class Keeper {
  session: Session;
  notices: Notice["id"][] = [];
  consent: Consent | null = null;
  /** The model that a page named when this session was begun. */
  #named: string | null = null;
  readonly #at: Keeping;
  readonly #shared;
  #pending: News | null = null;

  /** Comes back to what is kept, or starts anew. */
  constructor(at: Keeping) {
    this.#at = at;
    this.#shared = createSharedLog(at.store, at.newId);
    this.session = this.fresh();
    const news = this.#shared.readNews();
    if (news && news.log.events.length > 0) this.#comeBack(news);
    else if (at.store.readAside().length > 0) this.notices = ["set-aside"];
    const mark = at.stop.read();
    if (mark && !isStopped(this.session)) this.keep(stopBy(this.session, mark.danger, at.now()));
    else if (!mark && isStopped(this.session)) this.markStop(this.session);
  }

  /** A session before its first answer, about the model that the page names. */
  fresh(started = this.#at.now(), water = this.session && waterLeftBy(this.session)): Session {
    this.consent = null;
    this.#named = this.#at.model;
    // Nothing is taken at its word: the page's model is looked up where the code is asked for.
    return startSession(this.#at.guide, started, null, water);
  }

  /** The model that the session is about: as it was confirmed, else as a page named it; null where nobody has. */
  get about(): string | null {
    return memoryOf(this.session).model ?? this.#named;
  }

  #comeBack({ log, consent, about }: News): void {
    const { guide, store, stop, now } = this.#at;
    const { session, dropped } = resume(guide, log, now());
    // A stop does not grow old.
    if (isTooOld(log, consent, now(), guide) && !isStopped(session) && !stop.read()) {
      putAside(store, log);
      this.notices = ["set-aside"];
      this.keep(this.fresh(now(), waterLeftBy(session)));
      return;
    }
    const isWaitOver = session.log.events.some(
      ({ type }, place) => type === "wait-ended" && place >= log.events.length,
    );
    const isShortened = hasAnswers(log, dropped);
    // What this flow no longer takes is not lost: support can still read it.
    if (isShortened) store.setAside(log);
    this.notices = [isShortened ? "shortened" : isWaitOver ? "wait-over" : "welcome-back"];
    this.consent = consent;
    this.#named = about ?? this.#at.model;
    this.keep(session);
  }

  keep(next: Session): void {
    this.session = next;
    const isKept = this.#shared.write(next.log, { consent: this.consent, about: this.#named });
    if (isKept) this.notices = this.notices.filter((notice) => notice !== "memory-only");
    else if (!this.notices.includes("memory-only")) this.notices = [...this.notices, "memory-only"];
  }

  /** Takes over the log that another tab has kept since; writes nothing in its place. */
  takeNews(): boolean {
    const { guide, store, now } = this.#at;
    // Until a scenario that it needs is loaded, news can be taken over no more than half.
    const news = this.#shared.readNews() ?? this.#pending;
    this.#pending = news;
    if (!news) return false;
    const { log } = news;
    const { session, dropped } = takeOver(guide, log, now());
    this.#pending = null;
    // Two tabs wrote at once, or nothing could be kept for a while: what only this tab has can be gone on with.
    if (!news.isHeir && !isPartOf(this.session.log, log)) putAside(store, this.session.log);
    if (hasAnswers(log, dropped)) store.setAside(log);
    // A hazardous step that was passed in another tab is met behind its gate in this one.
    const taken = record(session, { type: "session-resumed", at: now() }).session;
    this.session = log.events.length > 0 ? taken : this.fresh(log.started, log.water);
    this.consent = news.consent;
    this.#named = news.about ?? this.#at.model;
    return true;
  }

  /** Sets aside what another tab has kept and this one cannot take over at once. */
  putNewsAside(): void {
    if (this.#pending) putAside(this.#at.store, this.#pending.log);
    this.#pending = null;
  }

  /** Goes where another tab has gone since, or stops where it has stopped; true where that changed anything. */
  follow(): boolean {
    const isNew = this.takeNews();
    const mark = this.#at.stop.read();
    const before = this.session;
    if (mark) this.session = stopBy(before, mark.danger, this.#at.now());
    if (!isNew && this.session === before) return false;
    this.forgetNotices();
    this.notices = [...this.notices, "other-tab"];
    return true;
  }

  forgetNotices(): void {
    this.notices = this.notices.filter((notice) => lasting.includes(notice));
  }

  markStop(stopped: Session): void {
    this.#at.stop.keep({ danger: memoryOf(stopped).danger ?? "not-sure", at: this.#at.now() });
  }

  /** Whether it has to be asked first if this is still about the machine of the session. */
  get isOtherMachine(): boolean {
    const { model } = this.#at;
    return !isStopped(this.session) && isOtherModel(this.about, model) && this.consent?.model !== model;
  }
}

/** Whether the events that were dropped at a log's end hold anything that a person did. */
function hasAnswers({ events }: { events: LogEvent[] }, dropped: number): boolean {
  return (
    dropped > 0 &&
    events.slice(-dropped).some(({ type }) => type !== "wait-ended" && type !== "session-resumed")
  );
}
