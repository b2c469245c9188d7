import { movesAt, provedAt } from "../../../src/advice/index.ts";
import { type ChartContext, createMemory, remember } from "../../../src/chart/memory.ts";
import { isWaitForIce } from "../../../src/compile/wait-for-ice.ts";
import type { Reading } from "../../../src/instruments/index.ts";
import { canAnswer, type Home, mends, observe } from "./home.ts";
import type { Scene } from "./scene.ts";

/** How a visit ended. */
export type Ending = { how: "fixed" | "part" | "professional"; cause: string | null; due: boolean };

/** One policy's visit to one home, and what it has taken so far. Changed as it goes. */
export type Visit = {
  home: Home;
  /** What is really wrong still. */
  present: string[];
  memory: ChartContext;
  minutes: number;
  checks: number;
  hours: number;
  gates: number;
  /** Parts bought, and whether each put something right. */
  bought: { cause: string; right: boolean; due: boolean }[];
  /** Causes put right, or so the people think, since the last wait. */
  fixed: string[];
  clock: number;
  ending: Ending | null;
};

export function createVisit(home: Home): Visit {
  const memory = createMemory();
  for (const [turn, answer] of Object.entries(home.scene.opening)) memory.findings[turn] = { answer, at: "" };
  const tallies = { minutes: 0, checks: 0, hours: 0, gates: 0 };
  return {
    home,
    present: [...home.faults],
    memory,
    ...tallies,
    bought: [],
    fixed: [],
    clock: 0,
    ending: null,
  };
}

/** A reading that stands for any: the verdict is drawn, not measured. */
const someReading = { kind: "flow", runs: [] } as const satisfies Reading;

const now = (visit: Visit) => new Date(visit.clock++ * 60_000).toISOString();

/** Asks a check. @returns its outcome, or null where the people could not answer */
export function doCheck(visit: Visit, check: string): string | null {
  const { home } = visit;
  const { flow, routes, world } = home.scene;
  const rule = flow.checks[check];
  if (!rule) throw new Error(`There is no check "${check}"`);
  visit.checks++;
  visit.gates += rule.gates?.length ?? 0;
  const look = visit.memory.done.includes(check) ? 2 : 1;
  if (look === 2) {
    const found = [...new Set(Object.values(routes[check] ?? {}).flatMap(({ finds }) => finds))];
    visit.memory = remember(visit.memory, { again: { check, found } }, { type: "", at: now(visit) });
  }
  const place = canAnswer(home, check, look) ? observe(home, check, visit.present, look) : -1;
  const outcome = world.checks[world.checkAt.get(check) ?? -1]?.outcomes[place]?.id;
  const route = outcome === undefined ? undefined : routes[check]?.[outcome];
  if (outcome === undefined || !route) {
    // Whoever cannot do a hazardous check says so at its gate.
    const turn = rule.gates?.length ? `gate-${rule.gates[0]}` : rule.start;
    const note = { turn: `${check}.${turn}`, answer: "cannot", done: check };
    visit.memory = remember(visit.memory, note, { type: "answered", at: now(visit) });
    visit.minutes += 1;
    return null;
  }
  visit.minutes += rule.minutes;
  visit.hours += route.hours;
  for (const { turn, answer, rule: result } of route.steps) {
    const note = {
      turn: `${check}.${turn}`,
      answer,
      ...(result.finds ? { finds: result.finds } : {}),
      // A wait speaks of what was put right before it, not of this.
      ...(result.remedies ? { remedies: result.remedies, forgets: repeatedChecks(flow) } : {}),
      done: check,
    };
    const reading = rule.turns[turn]?.kind === "reading" ? { reading: someReading } : {};
    visit.memory = remember(visit.memory, note, { type: "answered", at: now(visit), ...reading });
    if (result.to === "professional" || result.to === "fixed")
      end(visit, { how: result.to, cause: null, due: false });
  }
  for (const cause of route.fixes) {
    visit.fixed.push(cause);
    if (mends(home, cause)) visit.present = visit.present.filter((fault) => fault !== cause);
  }
  return outcome;
}

function repeatedChecks({ checks }: Scene["flow"]): string[] {
  return Object.values(checks).flatMap(({ id, repeats }) => (repeats ? [id] : []));
}

/** Waits for ice. Where nothing is wrong any more the ice is back and the visit ends. */
export function waitForIce(visit: Visit, check = firstWait(visit.home.scene)): void {
  const { flow, stakes } = visit.home.scene;
  visit.hours += stakes.waitHours;
  visit.minutes += stakes.waitMinutes;
  if (!visit.present.length) {
    end(visit, { how: "fixed", cause: null, due: false });
    return;
  }
  const turns = flow.checks[check]?.turns ?? {};
  const turn = Object.values(turns).find((one) => one.waits)?.then ?? "";
  // The answer by which a wait ends without what was waited for.
  const [answer = "none"] =
    Object.entries(turns[turn]?.answers ?? {}).find(([, { to }]) => to === "done") ?? [];
  const note = { turn: `${check}.${turn}`, answer, waited: true, inVain: true, done: check };
  visit.memory = remember(visit.memory, note, { type: "answered", at: now(visit) });
  visit.fixed = [];
}

function firstWait({ flow, scenario }: Scene): string {
  return flow.scenarios[scenario]?.checks.find(({ check }) => isWaitForIce(flow.checks[check]))?.check ?? "";
}

/** Buys the part for a cause; it puts right whatever it can. */
export function buyPart(visit: Visit, cause: string, due = false): boolean {
  const { causes } = visit.home.scene.flow;
  const part = causes[cause]?.part;
  const right = visit.present.some(
    (fault) => causes[fault]?.remedy === "part" && causes[fault]?.part === part,
  );
  visit.bought.push({ cause, right, due });
  return right;
}

export function end(visit: Visit, ending: Ending): void {
  visit.ending = ending;
}

/** What the scenario allows now, in the trade's order, nothing for a second time. */
export function movesNow({ home, memory }: Visit) {
  return movesAt(home.scene.subject, memory).filter(({ isAgain }) => !isAgain);
}

/** The endings with a cause that are proved now. */
export function provedNow({ home, memory }: Visit) {
  return provedAt(home.scene.subject, memory);
}
