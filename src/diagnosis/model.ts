import {
  type CheckRow,
  type ModelInput,
  type OutcomeRow,
  type ProofStep,
  type Remedy,
  signs,
  type Tables,
  tablesOf,
} from "./tables.ts";

/** A scenario ready to reason with. Causes and checks are numbered by their place. */
export type Model = {
  causes: readonly Cause[];
  checks: readonly Check[];
  causeAt: ReadonlyMap<string, number>;
  checkAt: ReadonlyMap<string, number>;
  /** Everything that some check needs prepared; the place is the bit. */
  preparations: readonly string[];
  /** Prior probabilities by cause; they sum to 1. */
  priors: Float64Array;
};

export type Cause = {
  id: string;
  remedy: Remedy;
  part: string | undefined;
  fitting: "self" | "professional";
  claim: "proved" | "due";
  proofs: readonly (readonly Step[])[];
};

/** `accepts`: P(one of the accepted outcomes | cause), by cause. */
export type Step = { check: number; outcomes: readonly number[]; accepts: Float64Array };

export type Check = {
  id: string;
  /** Place of the first check of the same group: the group's number. */
  group: number;
  minutes: number;
  /** What it needs prepared, and the bits of what it needs undone. */
  setUp: readonly SetUp[];
  undoes: number;
  outcomes: readonly Outcome[];
  /** P(an outcome that puts the cause right | cause), for the causes where there is one. */
  repairs: readonly { cause: number; chance: number }[];
  needs: readonly (readonly Step[])[];
};

/** One preparation: its bit among those that hold, and the minutes that it takes where it does not. */
export type SetUp = { bit: number; minutes: number };

/** `chances`: P(outcome | cause), by cause, never 0 or 1; over a check's outcomes they sum to 1. */
export type Outcome = { id: string; chances: Float64Array; fixes: readonly number[]; hours: number };

/**
 * A part of what tables hold, by place; ways that need a check outside of it are no ways in it. `weights`: priors of
 * those causes where they are others than the tables', up to a factor, each above 0.
 */
export type Among = { causes: readonly number[]; checks: readonly number[]; weights?: readonly number[] };

/** A model straight from numbers. @throws Error or RangeError as `tablesOf` does */
export function createModel(input: ModelInput): Model {
  return readModel(tablesOf(input));
}

/** Makes a model of tables that are right: from a build, or judged at the door. */
export function readModel(tables: Tables, among?: Among): Model {
  const { likelihoods } = tables;
  const causePlaces = among?.causes ?? [...tables.causes.keys()];
  const causes = causePlaces.flatMap((place) => tables.causes[place] ?? []);
  const checks = (among?.checks ?? [...tables.checks.keys()]).flatMap((place) => tables.checks[place] ?? []);
  const causeAt = new Map(causes.map(({ id }, place) => [id, place]));
  const checkAt = new Map(checks.map(({ id }, place) => [id, place]));
  const weights = causes.map(({ weight }, place) => among?.weights?.[place] ?? weight);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const groups = checks.map(({ id, group }) => group ?? id);
  const preparations = [...new Set(checks.flatMap(({ setUp = {} }) => Object.keys(setUp)))];
  const bitOf = (id: string) => (preparations.includes(id) ? 1 << preparations.indexOf(id) : 0);
  const built = checks.map((check, place): Check => {
    const outcomes = experiment(check, causePlaces, causeAt, likelihoods);
    const repairs = causes.flatMap((_, cause) => {
      const chance = outcomes.reduce(
        (sum, one) => sum + (one.fixes.includes(cause) ? (one.chances[cause] ?? 0) : 0),
        0,
      );
      return chance ? [{ cause, chance }] : [];
    });
    const group = groups.indexOf(groups[place] ?? check.id);
    const setUp = Object.entries(check.setUp ?? {}).map(([id, minutes]) => ({ bit: bitOf(id), minutes }));
    const undoes = (check.undoes ?? []).reduce((bits, id) => bits | bitOf(id), 0);
    return { id: check.id, group, minutes: check.minutes, setUp, undoes, outcomes, repairs, needs: [] };
  });
  const ways = (lists: readonly (readonly ProofStep[])[] = []) =>
    lists
      .filter((steps) => steps.every(({ check }) => checkAt.has(check)))
      .map((steps) => steps.map((step) => stepOf(step, built, checkAt, causes.length)));
  return {
    causes: causes.map(({ id, remedy, part, fitting = "self", claim = "proved", proofs }) => ({
      id,
      remedy,
      part: part ?? (remedy === "part" ? id : undefined),
      fitting,
      claim,
      proofs: ways(proofs),
    })),
    checks: built.map((check, place) => ({ ...check, needs: ways(checks[place]?.needs) })),
    causeAt,
    checkAt,
    preparations,
    priors: Float64Array.from(weights, (weight) => weight / total),
  };
}

/** The outcomes of a check as one experiment: for every cause their likelihoods are made to sum to 1. */
function experiment(
  check: CheckRow,
  causePlaces: readonly number[],
  causeAt: ReadonlyMap<string, number>,
  likelihoods: readonly number[],
): Outcome[] {
  const spoken = check.outcomes.map(({ likely }: OutcomeRow) =>
    causePlaces.map((place) => likelihoods[signs.indexOf(likely[place] ?? "0")] ?? 0),
  );
  const sums = causePlaces.map((_, cause) => spoken.reduce((sum, row) => sum + (row[cause] ?? 0), 0));
  return check.outcomes.map(({ id, fixes = [], hours = 0 }, row) => ({
    id,
    chances: Float64Array.from(sums, (sum, cause) => (spoken[row]?.[cause] ?? 0) / sum),
    // A cause that this scenario does not know needs no fixing in it.
    fixes: fixes.flatMap((cause) => causeAt.get(cause) ?? []),
    hours,
  }));
}

function stepOf(
  { check, outcomes }: ProofStep,
  checks: readonly Check[],
  checkAt: ReadonlyMap<string, number>,
  size: number,
): Step {
  const place = checkAt.get(check) ?? 0;
  const known = checks[place]?.outcomes ?? [];
  const accepted = known.flatMap(({ id }, at) => (outcomes.includes(id) ? [at] : []));
  const accepts = Float64Array.from({ length: size }, (_, cause) =>
    accepted.reduce((sum, at) => sum + (known[at]?.chances[cause] ?? 0), 0),
  );
  return { check: place, outcomes: accepted, accepts };
}
