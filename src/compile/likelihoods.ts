import { anythingElse, type CheckOutcome, type Flow, limitOf } from "../guide/index.ts";
import { complainedWorlds } from "./complained.ts";
import { sharesOf } from "./shares.ts";
import { isThere } from "./worlds.ts";

/** What people err at, by the sense that a check observes by: the limit that says how often. */
export const errorLimits = {
  reading: "error-reading",
  look: "error-look",
  listen: "error-listen",
  feel: "error-feel",
  memory: "error-memory",
} as const;

/** P(a check shows an outcome | a cause): outcomes in order, each by cause in order. */
export type Reports = {
  chance: number[][];
  /** As much of it as comes from people who report something else than is there. */
  slip: number[][];
};

/**
 * P(a check shows an outcome | a cause, the scenario's complaint), up to a factor for each cause: what is truly there to
 * see, by the model of the machine, as people of `by` report it; special words stand before that. Outcomes in order.
 */
export function likelihoodsOf(
  flow: Flow,
  scenario: string,
  id: string,
  causes: readonly string[],
): number[][] {
  const { error, at } = reportsOf(flow, scenario, id, causes);
  return at(error ? limitOf(flow.limits, error) : 0).chance;
}

/**
 * The same for any rate of error, of which `error` is the limit; null where no sense is named.
 * @returns `at` takes that rate; worked out of what is there to see, which is worked out once
 */
export function reportsOf(flow: Flow, scenario: string, id: string, causes: readonly string[]) {
  const check = flow.checks[id];
  const outcomes = Object.values(check?.outcomes ?? {});
  const complaint = flow.scenarios[scenario]?.complaint ?? "";
  const listed = causes.filter((cause) => cause !== anythingElse);
  const truths = listed.map((cause) => trulyShown(flow, outcomes, cause, complaint));
  const words = listed.map((cause) => spoken(flow, outcomes, cause));
  const shares = sharesOf(flow, scenario, null);

  /** Outcomes in order, each by cause in order; `of` says what stands for a cause at an outcome. */
  function rows(of: (cause: number, outcome: number) => number): number[][] {
    const columns = new Map(listed.map((cause, place) => [cause, outcomes.map((_, at) => of(place, at))]));
    // What nobody has thought of shows what such a complaint shows on the whole.
    const usual = outcomes.map((_, at) =>
      listed.reduce((sum, cause) => sum + (shares[cause] ?? 0) * (columns.get(cause)?.[at] ?? 0), 0),
    );
    return outcomes.map((_, at) => causes.map((cause) => (columns.get(cause) ?? usual)[at] ?? 0));
  }

  const at = (rate: number): Reports => {
    const channel = channelOf(outcomes, rate);
    const slips = truths.map(channel);
    return {
      chance: rows(
        (cause, place) =>
          words[cause]?.[place] ?? (truths[cause]?.[place] ?? 0) * (1 - rate) + (slips[cause]?.[place] ?? 0),
      ),
      slip: rows((cause, place) => (words[cause]?.[place] === null ? (slips[cause]?.[place] ?? 0) : 0)),
    };
  };
  return { error: check?.by ? errorLimits[check.by] : null, at };
}

/** How likely each outcome is to be the true one; those that only words speak of are none. */
function trulyShown(
  flow: Flow,
  outcomes: readonly CheckOutcome[],
  cause: string,
  complaint: string,
): number[] {
  const { machine } = flow;
  const quantities = outcomes.flatMap(({ shows = [] }) => shows.flatMap((states) => Object.keys(states)));
  const tests = outcomes.map(({ shows = [] }) => isThere(machine, shows));
  const seen = outcomes.map(({ sees = [] }) =>
    sees.includes(cause)
      ? 1
      : 1 - sees.reduce((none, one) => none * (1 - (machine.causes[one]?.besides ?? 0)), 1),
  );
  const caught = outcomes.map((outcome) => (outcome.caught ? wordOf(flow, outcome.caught) : 1));
  const plain = outcomes.findIndex(isPlain);
  const truth = outcomes.map(() => 0);
  let total = 0;
  for (const world of complainedWorlds(machine, cause, complaint, quantities)) {
    let left = world.chance;
    total += left;
    for (const [at, outcome] of outcomes.entries()) {
      if (outcome.says?.otherwise || at === plain) continue;
      const shown = left * (tests[at]?.(world) ? 1 : (seen[at] ?? 0)) * (caught[at] ?? 1);
      truth[at] = (truth[at] ?? 0) + shown;
      left -= shown;
    }
    if (plain >= 0) truth[plain] = (truth[plain] ?? 0) + left;
  }
  // A cause that is not thought of with this complaint shows nothing but itself.
  return total ? truth.map((one) => one / total) : truth.map((_, at) => Number(at === plain));
}

/** What is there to see where nothing is wrong with what the check looks at. */
const isPlain = ({ sees, shows, says }: CheckOutcome) => !sees && !shows && !says?.otherwise;

/** What is reported in place of what is truly there: a few of all reports are any of the other outcomes. */
function channelOf(outcomes: readonly CheckOutcome[], error: number): (truth: number[]) => number[] {
  const shares = outcomes.map(({ confirmed, says }) => (says?.otherwise ? 0 : confirmed ? error * error : 1));
  const total = shares.reduce((sum, one) => sum + one, 0);
  return (truth) =>
    truth.map((_, at) =>
      truth.reduce((sum, chance, other) => {
        const rest = total - (shares[other] ?? 0);
        return other === at || !rest ? sum : sum + (chance * error * (shares[at] ?? 0)) / rest;
      }, 0),
    );
}

/** The special words for a cause as numbers; null where there is none. */
function spoken(flow: Flow, outcomes: readonly CheckOutcome[], cause: string): (number | null)[] {
  return outcomes.map(({ says }) => {
    const word = says?.[cause] ?? says?.otherwise;
    return word === undefined ? null : wordOf(flow, word);
  });
}

function wordOf({ words }: Flow, word: string): number {
  const number = words.likelihood[word];
  if (number === undefined) throw new Error(`"${word}" is no word for a likelihood`);
  return number;
}
