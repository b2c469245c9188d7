import { type InsightLine, insightBounds } from "../../insight/index.ts";

/** How often each id was met; what is met first beyond the bound is counted together. */
export type Counts = { of: Map<string, number>; others: number };

export type Outcome = Extract<InsightLine, { what: "ended" }>["outcome"];

/** What was met in one scenario, or in the opening. */
export type ScenarioTally = {
  ended: Partial<Record<Outcome, number>>;
  /** Causes by how the search ended, as `outcome cause`. */
  causes: Counts;
  /** How many endings took so many minutes. */
  minutes: number[];
  /** What was said a day or more after an ending, as `outcome works` or `outcome fails`. */
  lasted: Counts;
  /** The same by what was put right, as `outcome cause works`. */
  held: Counts;
  left: Counts;
  returned: Counts;
  notUnderstood: Counts;
};

export type Tally = {
  lines: number;
  /** Lines that no panel has written. */
  bad: number;
  started: number;
  /** By id; the opening is ''. */
  scenarios: Map<string, ScenarioTally>;
  /** Turns at which somebody waits: who leaves there gives nothing up. */
  waits: Set<string>;
  missing: Counts;
};

const createCounts = (): Counts => ({ of: new Map(), others: 0 });

export function createTally(): Tally {
  return {
    ...{ lines: 0, bad: 0, started: 0 },
    scenarios: new Map(),
    waits: new Set(),
    missing: createCounts(),
  };
}

function count(counts: Counts, id: string): void {
  const known = counts.of.get(id);
  if (known === undefined && counts.of.size >= insightBounds.counted) counts.others++;
  else counts.of.set(id, (known ?? 0) + 1);
}

/** Counts one line; null is one that could not be read. The tally is changed in place: files are huge. */
export function countLine(tally: Tally, line: InsightLine | null): void {
  tally.lines++;
  if (!line) {
    tally.bad++;
    return;
  }
  if (line.what === "started") {
    tally.started++;
    return;
  }
  if (line.what === "model-missing") {
    count(tally.missing, line.code);
    return;
  }
  const scenario = scenarioIn(tally, line.scenario ?? "");
  switch (line.what) {
    case "ended":
      scenario.ended[line.outcome] = (scenario.ended[line.outcome] ?? 0) + 1;
      scenario.minutes[line.minutes] = (scenario.minutes[line.minutes] ?? 0) + 1;
      if (line.cause) count(scenario.causes, `${line.outcome} ${line.cause}`);
      return;
    case "lasted": {
      const works = line.works ? "works" : "fails";
      count(scenario.lasted, `${line.outcome} ${works}`);
      if (line.cause) count(scenario.held, `${line.outcome} ${line.cause} ${works}`);
      return;
    }
    case "left":
      if (line.kind === "wait" && tally.waits.size < insightBounds.counted) tally.waits.add(line.turn);
      count(scenario.left, line.turn);
      return;
    case "returned":
      count(scenario.returned, line.turn);
      return;
    case "not-understood":
      count(scenario.notUnderstood, line.turn);
  }
}

function scenarioIn({ scenarios }: Tally, id: string): ScenarioTally {
  // A file that is not ours may name any number of them.
  const known = scenarios.get(id) ?? (scenarios.size < insightBounds.id ? null : scenarios.get(""));
  if (known) return known;
  const made: ScenarioTally = {
    ...{ ended: {}, minutes: [] },
    causes: createCounts(),
    lasted: createCounts(),
    held: createCounts(),
    left: createCounts(),
    returned: createCounts(),
    notUnderstood: createCounts(),
  };
  scenarios.set(id, made);
  return made;
}
