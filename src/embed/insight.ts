import { shownIn } from "../advice/index.ts";
import { codeText } from "../catalogue/index.ts";
import type { FridgesideEventName, FridgesideEvents } from "../insight/index.ts";
import { type InsightLine, insightBounds } from "../insight/index.ts";
import { type LogEvent, memoryOf, type Session } from "../session/index.ts";
import { type Hears, scenarioOf } from "./teller.ts";

/** What a browser sends with; each may be missing, throw or fail. */
export type Sending = {
  /** False where the browser takes no more. */
  beacon(address: string, body: string): boolean;
  /** Rejects, or gives false, where it was not taken. */
  post(address: string, body: string): Promise<boolean>;
  later(work: () => void, ms: number): void;
};

/** Milliseconds until what could not be sent is sent again, and how often that is done by itself. */
const [PAUSE_MS, MOST_TRIES] = [30_000, 3];

/** Between two answers; more is a wait or a break, and no time at the panel (judgement). */
const longestGap = 15;

export type Insight = ReturnType<typeof createInsight>;

/**
 * Gathers what happened as anonymous lines, in memory alone, and sends them together.
 * @param mayKeep whether the person agrees; asked before each line and each sending
 */
export function createInsight(address: string, mayKeep: () => boolean, { beacon, post, later }: Sending) {
  let waiting: string[] = [];
  let tries = 0;

  /** The newest that fit into one batch. */
  function bound(lines: string[]): string[] {
    let bytes = 0;
    const kept = [...lines].reverse().slice(0, insightBounds.waiting);
    return kept
      .filter((line) => {
        bytes += new TextEncoder().encode(line).length + 1;
        return bytes <= insightBounds.batch;
      })
      .reverse();
  }

  function send(): void {
    if (!mayKeep()) waiting = [];
    if (!waiting.length) return;
    const lines = waiting;
    waiting = [];
    const body = `${lines.join("\n")}\n`;
    let isTaken = false;
    try {
      isTaken = beacon(address, body);
    } catch {
      // A browser without beacons, or one that takes no more of them.
    }
    if (isTaken) tries = 0;
    else void postAll(lines, body);
  }

  async function postAll(lines: string[], body: string): Promise<void> {
    if (await post(address, body).catch(() => false)) {
      tries = 0;
      return;
    }
    // Whoever has withdrawn meanwhile is asked nothing more.
    if (mayKeep()) waiting = bound([...lines, ...waiting]);
    if (waiting.length && tries++ < MOST_TRIES) later(send, PAUSE_MS);
  }

  return {
    hears: ((name, detail, session) => {
      const line = mayKeep() && lineOf(name, detail, session);
      if (!line) return;
      waiting = bound([...waiting, JSON.stringify(line)]);
      if (line.what === "ended" || waiting.length >= insightBounds.waiting) send();
    }) as Hears,
    send,
    /** Somebody has withdrawn: nothing of what waits is left. */
    drop(): void {
      waiting = [];
    },
  };
}

/** What happened as a line; null for what is counted nowhere. */
function lineOf(name: FridgesideEventName, detail: object, session: Session): InsightLine | null {
  const [format, scenario] = [1 as const, scenarioOf(session)];
  const { turn = "" } = detail as { turn?: string };
  switch (name) {
    case "fridgeside-started":
      return { format, what: "started" };
    case "fridgeside-ended": {
      const { outcome, cause, part } = detail as FridgesideEvents["fridgeside-ended"];
      const ending = { what: "ended", scenario, outcome, cause, part, ...spentIn(session) } as const;
      return outcome ? { ...ending, outcome, format: 2, ...foundIn(session, scenario) } : null;
    }
    case "fridgeside-lasted": {
      const said = detail as FridgesideEvents["fridgeside-lasted"];
      return { format, what: "lasted", scenario, ...said, days: Math.min(said.days, insightBounds.days) };
    }
    case "fridgeside-left":
      return {
        format,
        what: "left",
        scenario,
        turn,
        kind: (detail as FridgesideEvents["fridgeside-left"]).kind,
        ...spentIn(session),
      };
    case "fridgeside-returned":
      return { format, what: "returned", scenario, turn };
    case "fridgeside-not-found": {
      if ((detail as FridgesideEvents["fridgeside-not-found"]).what === "sentence")
        return { format, what: "not-understood", scenario, turn };
      const code = codeIn(session.log.events);
      return code ? { format, what: "model-missing", scenario, code } : null;
    }
    default:
      return null;
  }
}

/**
 * What the checks of a search came to, by ids of flows/ alone, as the diagnosis counts it: an answer that stands in no
 * outcome says nothing, and neither does the opening or a gate. With it what was put right in vain.
 */
function foundIn(session: Session, scenario: string | null): { seen: string[]; vain: string[] } {
  const { findings = {} } = session.guide.loaded.get(scenario ?? "")?.diagnosis ?? {};
  const memory = memoryOf(session);
  const seen = shownIn(findings, memory)
    .map(({ check, outcome }) => `${check}.${outcome}`)
    .filter((shown) => shown.length <= insightBounds.outcome);
  const vain = [...new Set(memory.inVain)];
  return { seen: seen.slice(-insightBounds.seen), vain: vain.slice(-insightBounds.vain) };
}

/** The minutes that somebody was at it, waits and breaks left out, and the number of answers. */
function spentIn({ log }: Session): { minutes: number; answers: number } {
  const instants = [log.started, ...log.events.map(({ at }) => at)].map((at) => Date.parse(at) / 60_000);
  const minutes = instants.slice(1).reduce((sum, at, place) => {
    const gap = at - (instants[place] ?? at);
    return sum + (gap > 0 && gap <= longestGap ? gap : 0);
  }, 0);
  const answers = log.events.filter((event) => "turn" in event).length;
  return { minutes: Math.min(Math.round(minutes), insightBounds.minutes), answers };
}

/**
 * The model code that was typed last, without dashes and blanks; null where it may be anything else: people type names
 * and telephone numbers into any field.
 */
function codeIn(events: readonly LogEvent[]): string | null {
  const typed = events.flatMap((event) => (event.type === "model-given" ? event.typed : [])).at(-1) ?? "";
  const code = codeText(typed);
  const isCode =
    /\d/.test(code) && /\p{L}/u.test(code) && code.length >= 4 && code.length <= insightBounds.code;
  return isCode && typed.trim().split(/\s+/).length <= 3 ? code : null;
}
