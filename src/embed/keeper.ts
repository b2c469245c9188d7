import {
  advance,
  createFeed,
  createJournal,
  type Feed,
  greetingOf,
  type Held,
  isStopped,
  type Journal,
  type LogEvent,
  leavePrepared,
  leftOf,
  memoryOf,
  putBack,
  record,
  replay,
  resume,
  type Session,
  type Standing,
  standingOf,
  startAgain,
  stopBy,
  type Told,
  takeOver,
  tell,
} from "../session/index.ts";
import { isOtherModel, type Notice } from "../turn/index.ts";
import { hasAnswers, isBegun, isPartOf, isTooOld, putAside, putUnreadAside } from "./coming-back.ts";
import type { Consent } from "./door.ts";
import type { Keeping } from "./keeping.ts";
import { lastingOf, withBrought, withoutCarried } from "./notices.ts";
import { type Beside, createSharedJournal, type News } from "./shared-journal.ts";

/** One tab's session and where it is kept; several tabs share one journal. */
export class Keeper {
  session: Session;
  notices: Notice["id"][] = [];
  consent: Consent | null = null;
  /** The model that a page named when this session was begun. */
  #named: string | null = null;
  /** The journal as it was last written or read; the session may be ahead of it until it is kept. */
  #standing: Standing;
  readonly #at: Keeping;
  readonly #shared;
  readonly #feed: Feed;
  /** What another tab has kept, until a scenario that it needs is loaded. */
  #pending: News | null = null;

  /** Comes back to what is kept, or starts anew. */
  constructor(at: Keeping) {
    this.#at = at;
    this.#shared = createSharedJournal(at.store, at.newId, at.door);
    this.#standing = standingOf(createJournal(at.now()));
    this.#feed = createFeed(this.#standing.journal);
    this.#feed.subscribe((journal) => this.#store(journal));
    if (at.added) this.#feed.subscribe(at.added);
    this.session = this.begin();
    const news = this.#shared.readNews();
    if (news && isBegun(news.journal)) this.#comeBack(news);
    else {
      if (news) {
        const { session, dropped } = takeOver(at.guide, standingOf(news.journal).log, at.now());
        this.#take({ ...news, consent: null, about: at.model }, session, dropped);
      }
      if (at.store.readAside().length > 0) this.notices = ["set-aside"];
    }
    this.notices = withBrought(this.notices, at);
    const mark = at.stop.read();
    if (mark && !isStopped(this.session)) this.keep(stopBy(this.session, mark.danger, at.now()));
    else if (!mark && isStopped(this.session)) this.markStop(this.session);
  }

  /** A session before its first answer in a journal of its own; a tap that the one before has closed stays so. */
  begin(at = this.#at.now()): Session {
    const { guide, model } = this.#at;
    this.#isAbout({ consent: null, about: model });
    // Nothing is taken at its word: the page's model is looked up where the code is asked for.
    this.#standing = standingOf(createJournal(at));
    const left = this.session && leftOf(this.session);
    return replay(guide, leavePrepared(this.#standing.log, left, at)).session;
  }

  /** A session before its first answer in the same journal. */
  startAgain(at: string): Session {
    const { newId, model } = this.#at;
    this.#isAbout({ consent: null, about: model });
    this.notices = withoutCarried(this.notices);
    const { standing, session } = startAgain(this.#standing, this.session, at, newId());
    this.#standing = standing;
    return session;
  }

  /** Moves on by answers that were given before the session was there, up to the first that does not fit; true for all. */
  takeEarly(events: LogEvent[], move: (next: Session) => void): boolean {
    this.follow();
    // A new one began with the first of them.
    let session = this.journal.entries.length > 0 ? this.session : this.begin(events[0]?.at);
    const areTaken = events.every((event) => {
      if (event.type === "answered" && event.turn === session.flow.greets && greetingOf(session)) {
        const { turn, answer, at } = event;
        this.#standing = tell(this.#standing, { words: "", facts: [{ turn, answer }] }, at, this.#at.newId());
        return true;
      }
      const recorded = record(session, event);
      session = putBack(recorded.session, this.held, event.at);
      return !recorded.refusal;
    });
    move(session);
    return areTaken;
  }

  /** The model that the session is about: as it was confirmed, else as a page named it; null where nobody has. */
  get about(): string | null {
    return memoryOf(this.session).model ?? this.#named;
  }

  get journal(): Journal {
    return this.#standing.journal;
  }

  /** Answers that a change has taken back, and that may still fit. */
  get held(): Held[] {
    return this.#standing.held;
  }

  #comeBack(news: News): void {
    const { guide, store, stop, now } = this.#at;
    this.#feed.take(news.journal);
    this.#standing = standingOf(news.journal);
    const { log } = this.#standing;
    const { session, dropped } = resume(guide, log, now());
    // A stop does not grow old.
    if (isTooOld(log, news.consent, now(), guide) && !isStopped(session) && !stop.read()) {
      putAside(store, news.journal);
      this.notices = ["set-aside"];
      this.session = session;
      this.keep(this.begin());
      return;
    }
    const isWaitOver = session.log.events.some(
      ({ type }, place) => type === "wait-ended" && place >= log.events.length,
    );
    const isShortened = hasAnswers(log, dropped);
    // What this flow no longer takes is not lost: support can still read it.
    if (isShortened) store.setAside(news.journal);
    this.notices = [isShortened ? "shortened" : isWaitOver ? "wait-over" : "welcome-back"];
    this.#isAbout(news);
    this.keep(session);
  }

  #isAbout({ consent, about }: Beside): void {
    this.consent = consent;
    this.#named = about ?? this.#at.model;
  }

  /** @param held places in the log before of answers that may be put back */
  keep(next: Session, held: number[] = []): void {
    const { now, newId } = this.#at;
    this.#standing = advance(this.#standing, next.log, now(), newId, held);
    this.session = next;
    this.#feed.put(this.#standing.journal);
  }

  /** Writes down what was said unasked; the session that it leads to is not kept yet. */
  tell(told: Told): Session {
    const at = this.#at.now();
    this.follow();
    this.#standing = tell(this.#standing, told, at, this.#at.newId());
    this.#feed.put(this.#standing.journal);
    return putBack(this.session, this.held, at);
  }

  #store(journal: Journal): void {
    const isKept = this.#shared.write(journal, { consent: this.consent, about: this.#named });
    if (isKept) this.notices = this.notices.filter((notice) => notice !== "memory-only");
    else if (!this.notices.includes("memory-only")) this.notices = [...this.notices, "memory-only"];
  }

  /** Goes on with a journal that was set aside, in place of the one in use; `others` lie there too. */
  goOnWith(journal: Journal, others: unknown[]): Session {
    const { guide, store, now } = this.#at;
    const [at, standing] = [now(), standingOf(journal)];
    const { session } = resume(guide, leavePrepared(standing.log, leftOf(this.session), at), at);
    this.#feed.take(journal);
    store.writeAside(others);
    putAside(store, this.journal);
    this.consent = { at, model: null };
    this.notices = withoutCarried(this.notices);
    this.#standing = standing;
    // A stop is one on every phone that it comes to.
    if (isStopped(session)) this.markStop(session);
    return session;
  }

  /** Takes over the journal that another tab has kept since; writes nothing in its place. */
  takeNews(): boolean {
    const news = this.#shared.readNews() ?? this.#pending;
    this.#pending = news;
    if (!news) return false;
    const { session, dropped } = takeOver(this.#at.guide, standingOf(news.journal).log, this.#at.now());
    this.#pending = null;
    // Two tabs wrote at once, or nothing could be kept for a while: what only this tab has can be gone on with.
    if (!news.isHeir && !isPartOf(this.journal, news.journal)) putAside(this.#at.store, this.journal);
    this.#take(news, session, dropped);
    return true;
  }

  /** Sets aside what another tab has kept and this one cannot take over at once. */
  putNewsAside(): void {
    const unread = this.#shared.takeUnread();
    if (unread) putUnreadAside(this.#at.store, unread);
    if (this.#pending) putAside(this.#at.store, this.#pending.journal);
    this.#pending = null;
  }

  #take(news: News, session: Session, dropped: number): void {
    const { store, now } = this.#at;
    this.#standing = standingOf(news.journal);
    this.#feed.take(news.journal);
    if (hasAnswers(this.#standing.log, dropped)) store.setAside(news.journal);
    // A hazardous step that was passed in another tab is met behind its gate in this one.
    this.session = record(session, { type: "session-resumed", at: now() }).session;
    this.#isAbout(news);
  }

  /** Goes where another tab has gone since, or stops where it has stopped; true where that changed anything. */
  follow(): boolean {
    const isNew = this.takeNews();
    const mark = this.#at.stop.read();
    const before = this.session;
    if (mark) this.session = stopBy(before, mark.danger, this.#at.now());
    if (!isNew && this.session === before) return false;
    this.notices = [...lastingOf(this.notices), "other-tab"];
    return true;
  }

  forgetNotices(): void {
    this.notices = lastingOf(this.notices);
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
