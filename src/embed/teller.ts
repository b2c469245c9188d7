import { normaliseCode } from "../catalogue/index.ts";
import type { FridgesideEventName, FridgesideEvents } from "../insight/index.ts";
import { type Entry, type Journal, memoryOf, metaOf, type Session } from "../session/index.ts";
import { type FoundModel, type FoundPart, machineTurn, type Turn } from "../turn/index.ts";
import { happeningsOf } from "./happenings.ts";
import { tellPage } from "./tell-page.ts";

/** Also hears what the page is told; `session` is the one on screen. */
export type Hears = <Name extends FridgesideEventName>(
  name: Name,
  detail: FridgesideEvents[Name],
  session: Session,
) => void;

/** The last turn that was told of, by session name: a start that an attribute brings about shows nothing new. */
const lastTold = new Map<string, string>();

/** Codes that were not found in one visit; nobody types as many. */
const mostCodes = 100;

/**
 * Tells the page what happens, each thing once: what was done here, not what another tab did or a reload repeats.
 * @param ended is called where a danger was reported before the engine came
 */
export function createTeller(host: EventTarget, sessionName: string, ended: (session: Session) => void) {
  let waiting: { journal: Journal; added: Entry[] } | null = null;
  let session: Session | null = null;
  let turn: Turn | null = null;
  let isBegun = false;
  /** Whether the last that was done in this session was done in this tab. */
  let isOurs = false;
  let hasLeft = false;
  /** An ending has named a kind of part, and what the shop has of it is not told yet. */
  let part: { kind: string; model: string | null } | null = null;
  const unknown = new Set<string>();
  let hears: Hears = () => {};

  function tell<Name extends FridgesideEventName>(name: Name, detail: FridgesideEvents[Name]): void {
    if (session) hears(name, detail, session);
    tellPage(host, name, detail);
  }

  const scenario = () => (session ? scenarioOf(session) : null);
  const isUnder = () => isBegun && isOurs && session !== null && turn !== null && !turn.ending;

  function partShown(number: string | null): void {
    if (part) tell("fridgeside-part-shown", { ...part, number });
    part = null;
  }

  return {
    /** Entries were added to the journal here, and are told once the screen shows what came of them. */
    added(journal: Journal, added: Entry[]): void {
      waiting = { journal, added: [...(waiting?.added ?? []), ...added] };
    },
    /** Another screen stands. */
    shown(next: Session, on: Turn | null): void {
      const [before, isFirst] = [turn, session === null];
      const isSame = session?.log.events === next.log.events;
      session = next;
      turn = on;
      const { journal, added } = waiting ?? { journal: null, added: [] };
      waiting = null;
      const wasKept = journal !== null && journal.entries.length > added.length;
      // What a start corrects about a kept journal is nobody's doing.
      const done = journal ? happeningsOf(journal, added, knownOf(next, before?.turn ?? on?.turn ?? "")) : [];
      for (const { name, detail } of done)
        if (!isFirst || name !== "fridgeside-back") tell(name, detail as never);
      if (journal) isBegun = journal.entries.some(({ event }) => "turn" in event || event.type === "told");
      const isAct = added.length > 0;
      if (isAct || isFirst) isOurs = true;
      else if (!isSame) isOurs = false;
      const told = lastTold.get(sessionName);
      const isAgain = done.some(
        ({ name, detail }) => name === "fridgeside-answered" && detail.turn === on?.turn,
      );
      if (isFirst && wasKept) {
        const { turn: left, outcome } = metaOf(next);
        if (told !== left && !outcome) tell("fridgeside-returned", { turn: left });
        lastTold.set(sessionName, left);
      } else if (on && on.turn !== machineTurn && (on.turn !== told || isAgain)) {
        // Only to the greeting somebody can go back without a word in the journal.
        if (isSame && !isAct && on.turn === next.flow.greets)
          tell("fridgeside-back", { turn: on.turn, drops: 1 });
        if (isSame || isAct || isFirst)
          tell("fridgeside-turn-shown", { turn: on.turn, kind: on.kind, scenario: scenario() });
        lastTold.set(sessionName, on.turn);
      }
      if (isFirst && done.some(({ name }) => name === "fridgeside-danger")) ended(next);
    },
    /** An ending was come to by somebody's own act. */
    ended(detail: FridgesideEvents["fridgeside-ended"], canLookUp: boolean): void {
      tell("fridgeside-ended", detail);
      part = detail.part === null ? null : { kind: detail.part, model: detail.model };
      if (!canLookUp || detail.model === null) partShown(null);
    },
    /** A day or more after its ending somebody said whether it works. */
    lasted(works: boolean, days: number): void {
      const { outcome } = session ? metaOf(session) : {};
      if (session && outcome && outcome !== "later" && outcome !== "stopped")
        tell("fridgeside-lasted", { outcome, cause: memoryOf(session).cause, works, days });
    },
    /** A model code was looked for. */
    looked(typed: string, found: FoundModel): FoundModel {
      const read = normaliseCode(typed);
      const isLost = found.kind === "unknown" || found.kind === "near";
      if (read.kind === "code" && isLost && unknown.size < mostCodes) unknown.add(read.code);
      return found;
    },
    /** The shop was asked for its part of a kind. */
    fitted(kind: string, found: FoundPart): FoundPart {
      if (part?.kind === kind && found.kind !== "unread")
        partShown(found.kind === "part" ? found.part.number : null);
      return found;
    },
    /** The page is hidden or closed, or is back. */
    look(isHidden: boolean): void {
      if (isHidden && !hasLeft && isUnder() && turn) {
        hasLeft = true;
        tell("fridgeside-left", { turn: turn.turn, kind: turn.kind, scenario: scenario() });
      } else if (!isHidden && hasLeft) {
        hasLeft = false;
        if (turn) tell("fridgeside-returned", { turn: turn.turn });
      }
    },
    /** One more who hears all of it. */
    hear(who: Hears): void {
      hears = who;
    },
  };

  function knownOf(now: Session, before: string) {
    const { findings } = memoryOf(now);
    return {
      turn: before,
      dangers: now.flow.dangers,
      verdictOf: (id: string) => findings[id]?.answer ?? "",
      isUnknown: (typed: string) => {
        const read = normaliseCode(typed);
        return read.kind === "code" && unknown.has(read.code);
      },
    };
  }
}

export type Teller = ReturnType<typeof createTeller>;

/** The scenario that a session has come to; null in the opening. */
export function scenarioOf({ guide, chart }: Session): string | null {
  return [...guide.loaded.values()].find((one) => one.chart === chart)?.id ?? null;
}

/** Has it look whenever the page is hidden, closed or back. @returns ends it */
export function watchLeaving({ look }: Teller): () => void {
  const turned = () => look(document.visibilityState === "hidden");
  const closed = () => look(true);
  document.addEventListener("visibilitychange", turned);
  addEventListener("pagehide", closed);
  addEventListener("pageshow", turned);
  return () => {
    document.removeEventListener("visibilitychange", turned);
    removeEventListener("pagehide", closed);
    removeEventListener("pageshow", turned);
  };
}
