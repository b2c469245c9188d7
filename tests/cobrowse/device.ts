import { createEnd, type End, type KeptEnd } from "../../src/cobrowse/client/index.ts";
import type { First, Lane, RoomRecord } from "../../src/cobrowse/protocol/index.ts";
import type { Lab, LossyLine } from "./lossy.ts";

/** A phone or a desk in a simulation: the end that is shipped, on lines that a test holds, with a storage of its own. */
export class Device {
  line: LossyLine | null = null;
  code = "";
  /** The last reason that the relay gave for hanging up. */
  no = "";
  /** What it was told since the page was loaded. */
  records: RoomRecord[] = [];
  /** Whether the relay has last said that there is nothing more. */
  hasAll = false;
  #disk = "null";
  #end: End;
  readonly #lab: Lab;
  readonly #first: First;

  constructor(lab: Lab, first: First) {
    this.#lab = lab;
    this.#first = first;
    this.#end = this.#load();
  }

  say(kind: string, body = "", lane: Lane = "carried") {
    this.#end.say(kind, body, lane);
  }

  /** What it would come back with, as it was kept. */
  place() {
    return (JSON.parse(this.#disk) as KeptEnd | null)?.place ?? null;
  }

  /** Whether the relay has acknowledged all that was said. */
  isHeard(): boolean {
    return !this.#end.unheard("carried").length && !this.#end.unheard("steering").length;
  }

  /** The page is loaded again: what was not kept is gone. */
  reload() {
    this.line?.drop();
    this.#end = this.#load();
  }

  /** Dials where there is no line, else sends what is due, and hangs up where nobody is at the other end. */
  act() {
    if (!this.line?.isUp) this.#dial();
    else if (!this.#end.beat()) this.line.drop();
  }

  #load(): End {
    this.records = [];
    this.hasAll = false;
    return createEnd(this.#first, JSON.parse(this.#disk) as KeptEnd | null, {
      now: () => this.#lab.clock.now,
      keep: (kept) => {
        this.#disk = JSON.stringify(kept);
      },
      told: (told) => {
        if (told.type === "code") this.code = told.code;
        if (told.type === "no") this.no = told.why;
        if (told.type === "all") this.hasAll = true;
        if (told.type === "record") this.records.push(told.record);
      },
    });
  }

  #dial() {
    this.#end.down();
    const end = this.#end;
    // What comes late on an older line is heard by nobody.
    const line: LossyLine = this.#lab.dial((text) => line === this.line && end.hear(text));
    this.line = line;
    end.up((text) => line.isUp && line.toRelay.push(text));
  }
}
