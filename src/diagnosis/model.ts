/** Who puts a cause right: the householder with what is at hand, a part, or somebody who knows the trade. */
export type Remedy = "self" | "part" | "professional";

/** What a check must have shown: one of `outcomes`. */
export type ProofStep = { check: string; outcomes: readonly string[] };

/** What the trade knows of one scenario, in its words. Plain data; the flow files are one way to write it. */
export type ModelInput = {
  /** Numbers behind the words: likelihoods within 0 and 1, both exclusive; priors above 0. */
  words: { likelihood: Record<string, number>; prior: Record<string, number> };
  causes: readonly CauseInput[];
  /** In the trade's order, which decides where the belief has no opinion. */
  checks: readonly CheckInput[];
};

export type CauseInput = {
  id: string;
  prior: string;
  remedy: Remedy;
  /** The kind of part; causes that share one are put right by the same purchase. */
  part?: string | undefined;
  /** Where only a professional may fit the part, calling one is never in vain. */
  fitting?: "self" | "professional" | undefined;
  /** `due`: its proof shows only that the part is worth having anyway. */
  claim?: "proved" | "due" | undefined;
  /** Ways to prove the cause, each a list of steps that are all needed. Tells the look-ahead what a proof costs. */
  proofs?: readonly (readonly ProofStep[])[] | undefined;
};

export type CheckInput = {
  id: string;
  /** Checks that measure the same thing share a group and count once, the latest. Alone: its own group. */
  group?: string | undefined;
  /** Minutes of attention. */
  minutes: number;
  outcomes: Record<string, OutcomeInput>;
  /** Ways to come to be allowed, like a proof; only the look-ahead asks. */
  needs?: readonly (readonly ProofStep[])[] | undefined;
};

export type OutcomeInput = {
  /** Likelihood words by cause; `otherwise` for causes not named. */
  says: Record<string, string>;
  /** Causes that the check puts right on the way to this outcome. */
  fixes?: readonly string[] | undefined;
  /** Hours of waiting that this outcome takes, such as a thaw. */
  hours?: number | undefined;
};

/** A scenario ready to reason with. Causes and checks are numbered by their place. */
export type Model = {
  causes: readonly Cause[];
  checks: readonly Check[];
  causeAt: ReadonlyMap<string, number>;
  checkAt: ReadonlyMap<string, number>;
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
  outcomes: readonly Outcome[];
  /** P(an outcome that puts the cause right | cause), for the causes where there is one. */
  repairs: readonly { cause: number; chance: number }[];
  needs: readonly (readonly Step[])[];
};

/** `chances`: P(outcome | cause), by cause, never 0 or 1; over a check's outcomes they sum to 1. */
export type Outcome = { id: string; chances: Float64Array; fixes: readonly number[]; hours: number };

/**
 * Turns words into numbers once. A check with fewer than two outcomes says nothing and stays without any.
 *
 * @throws RangeError for a number out of range, Error for a word, cause or check that does not exist: faults of the
 * data, which the verifier reports before anyone gets here
 */
export function createModel({ words, causes, checks }: ModelInput): Model {
  const causeAt = new Map(causes.map(({ id }, place) => [id, place]));
  const checkAt = new Map(checks.map(({ id }, place) => [id, place]));
  const weights = causes.map(({ id, prior }) => {
    const weight = words.prior[prior];
    if (weight === undefined) throw new Error(`Cause "${id}": "${prior}" is no word for a prior`);
    if (!(weight > 0 && weight < Infinity)) throw new RangeError(`Prior "${prior}" must be above 0`);
    return weight;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const groups = checks.map(({ id, group }) => group ?? id);
  const built = checks.map((check, place): Check => {
    const outcomes = experiment(check, causes, causeAt, words.likelihood);
    const repairs = causes.flatMap((_, cause) => {
      const chance = outcomes.reduce(
        (sum, one) => sum + (one.fixes.includes(cause) ? (one.chances[cause] ?? 0) : 0),
        0,
      );
      return chance ? [{ cause, chance }] : [];
    });
    const group = groups.indexOf(groups[place] ?? check.id);
    return { id: check.id, group, minutes: check.minutes, outcomes, repairs, needs: [] };
  });
  const ways = (lists: readonly (readonly ProofStep[])[] = []) =>
    lists.map((steps) => steps.map((step) => stepOf(step, built, checkAt, causes.length)));
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
    priors: Float64Array.from(weights, (weight) => weight / total),
  };
}

/** The outcomes of a check as one experiment: for every cause their likelihoods are made to sum to 1. */
function experiment(
  check: CheckInput,
  causes: readonly CauseInput[],
  causeAt: ReadonlyMap<string, number>,
  likelihood: Record<string, number>,
): Outcome[] {
  const entries = Object.entries(check.outcomes);
  if (entries.length < 2) return [];
  const spoken = entries.map(([id, { says }]) =>
    causes.map((cause) => {
      const word = says[cause.id] ?? says.otherwise;
      const number = word === undefined ? undefined : likelihood[word];
      const place = `Check "${check.id}", outcome "${id}", cause "${cause.id}"`;
      if (number === undefined) throw new Error(`${place}: "${word}" is no word for a likelihood`);
      if (!(number > 0 && number < 1)) throw new RangeError(`"${word}" must lie between 0 and 1`);
      return number;
    }),
  );
  const sums = causes.map((_, cause) => spoken.reduce((sum, row) => sum + (row[cause] ?? 0), 0));
  return entries.map(([id, { fixes = [], hours = 0 }], row) => ({
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
  const place = checkAt.get(check);
  const known = place === undefined ? undefined : checks[place];
  if (place === undefined || !known)
    throw new Error(`A proof names the check "${check}", which does not exist`);
  const accepted = known.outcomes.flatMap(({ id }, at) => (outcomes.includes(id) ? [at] : []));
  const accepts = Float64Array.from({ length: size }, (_, cause) =>
    accepted.reduce((sum, at) => sum + (known.outcomes[at]?.chances[cause] ?? 0), 0),
  );
  return { check: place, outcomes: accepted, accepts };
}
