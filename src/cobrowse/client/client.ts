import type { First, Lane, Why } from "../protocol/index.ts";
import { createEnd, type End, type KeptEnd, type Told } from "./end.ts";

/** Milliseconds between two looks at what is due, and until a lost line is dialled anew, at first and at most. */
const [beat, soonest, latest] = [1000, 1000, 30_000];

/** After these there is something to come back to, once some time has passed. */
const passing: readonly Why[] = ["busy", "flood", "silent"];

/** A line as a browser's web socket is one. */
export type Line = { send(text: string): void; close(): void };

/** What a line tells. */
export type OnLine = { up(): void; text(text: string): void; down(): void };

export type Means = {
  /**
   * Dials; it tells `on` later, never before it returns. What it throws counts as a line that is down.
   * @param to the address of another relay, where the last one named it
   */
  dial(on: OnLine, to?: string): Line;
  now(): number;
  /** @returns ends it */
  after(milliseconds: number, work: () => void): () => void;
  keep(kept: KeptEnd): void;
  /** `line` says whether there is one on which somebody is welcome. */
  told(told: Told | { type: "line"; isUp: boolean }): void;
};

/** One end of a room that dials, comes back after whatever happens to its line, and says what it was given. */
export type Client = Pick<End, "hold" | "unheard"> & {
  say(kind: string, body?: string, lane?: Lane): boolean;
  /** There may be a connection again: it does not wait for its next try. */
  wake(): void;
  /** Hangs up for good; what is due by then was sent. */
  close(): void;
};

/** Dials at once. */
export function createClient(first: First, kept: KeptEnd | null, means: Means): Client {
  const { now, after } = means;
  /** Ends the line that there is. */
  let endLine: (() => void) | null = null;
  let pause = soonest;
  let dialAt = 0;
  let to: string | undefined;
  let isOver = false;
  let isUp = false;
  let cancel = () => {};

  const end = createEnd(first, kept, {
    now,
    keep: means.keep,
    told(told) {
      if (told.type === "welcome") {
        pause = soonest;
        setUp(true);
      }
      if (told.type === "moving") {
        to = told.to ?? to;
        dialAt = now() + told.wait;
      }
      if (told.type === "no") {
        if (passing.includes(told.why)) dialAt = now() + Math.max(told.wait ?? 0, latest);
        else isOver = true;
      }
      means.told(told);
    },
  });

  function setUp(is: boolean): void {
    if (is === isUp) return;
    isUp = is;
    means.told({ type: "line", isUp });
  }

  function dial(): void {
    let isOpen = true;
    dialAt = 0;
    try {
      const line = means.dial(
        {
          up: () => isOpen && end.up((text) => line.send(text)),
          text: (text) => isOpen && end.hear(text),
          down: () => isOpen && drop(),
        },
        to,
      );
      endLine = () => {
        isOpen = false;
        line.close();
      };
    } catch {
      drop();
    }
  }

  function endAll(): void {
    endLine?.();
    endLine = null;
    end.down();
  }

  function drop(): void {
    endAll();
    // A relay that another one has named, and that is not there, is not waited for.
    if (!isUp) to = undefined;
    setUp(false);
    dialAt = Math.max(dialAt, now() + pause);
    pause = Math.min(latest, pause * 2);
  }

  function step(): void {
    cancel();
    if (isOver) {
      hangUp();
      return;
    }
    if (endLine && !end.beat()) drop();
    if (!endLine && now() >= dialAt) dial();
    cancel = after(beat, step);
  }

  function hangUp(): void {
    cancel();
    endAll();
    setUp(false);
  }

  step();
  return {
    say: end.say,
    unheard: end.unheard,
    hold: end.hold,
    wake() {
      dialAt = 0;
      step();
    },
    close() {
      isOver = true;
      hangUp();
    },
  };
}
