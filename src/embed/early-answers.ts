import { type FirstTurn, type Given, leadAfter, openingView, type View } from "../turn/index.ts";

/** Answers that were given to the opening before the engine was there, and that it has not taken yet. */
export class EarlyAnswers {
  #given: Given[] = [];
  /** How many are being handed over: these can no longer be taken back here. */
  #handed = 0;
  /** What the first file knows in the language that is drawn. */
  first: FirstTurn;
  /** A shop's own flows may ask otherwise: then only the first question is drawn, and its answer waits. */
  readonly #isOwn: () => boolean;

  constructor(first: FirstTurn, isOwn: () => boolean) {
    this.first = first;
    this.#isOwn = isOwn;
  }

  /** Where an answer leads; see leadAfter. */
  leadOf(turn: string, answer: string): string | undefined {
    const lead = leadAfter(this.first, [...this.#given, { type: "answered", turn, answer, at: "" }]);
    return lead?.[0] === "!" || !this.#isOwn() ? lead : undefined;
  }

  /** The opening after all of them. */
  get view(): View {
    return openingView(this.first, this.#isOwn() ? [] : this.#given);
  }

  get isEmpty(): boolean {
    return this.#given.length === 0;
  }

  /** The last answer, where only the engine goes on from it. */
  get waiting(): string {
    const { answer = "" } = this.#given.at(-1) ?? {};
    const lead = leadAfter(this.first, this.#given);
    return lead && !this.#isOwn() ? "" : answer;
  }

  /** Takes an answer, unless one waits for the engine already. */
  give(turn: string, answer: string, at: string): void {
    if (!this.waiting) this.#given.push({ type: "answered", turn, answer, at });
  }

  /** Goes back to an answer and drops the later ones; false where the engine has it by now. */
  change(index: number): boolean {
    if (index < this.#handed) return false;
    this.#given.length = index;
    return true;
  }

  /** Gives what was not handed over yet, until nothing is left; where that is not taken, nothing later is. */
  async handOver(take: (given: Given[]) => Promise<boolean>): Promise<void> {
    while (this.#handed < this.#given.length) {
      const given = this.#given.slice(this.#handed);
      this.#handed = this.#given.length;
      if (!(await take(given))) this.#handed = this.#given.length;
    }
  }

  /** Forgets what was handed over to a start that was overtaken: it is kept by now. */
  settle(): void {
    this.#given.splice(0, this.#handed);
    this.#handed = 0;
  }

  clear(): void {
    this.#given = [];
    this.#handed = 0;
  }
}
