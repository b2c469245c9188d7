/** Who puts a cause right: the householder with what is at hand, a part, or somebody who knows the trade. */
export type Remedy = "self" | "part" | "professional";

/** What a check must have shown: one of `outcomes`. */
export type ProofStep = { check: string; outcomes: readonly string[] };

/** What is known of one scenario, in numbers. Plain data; a model of the machine is one way to come by it. */
export type ModelInput = {
  causes: readonly CauseInput[];
  /** In the trade's order, which decides where the belief has no opinion. */
  checks: readonly CheckInput[];
};

export type CauseInput = {
  id: string;
  /** Its prior before all are made to sum to 1; above 0. */
  weight: number;
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
  /** Minutes of attention, beyond what it takes to prepare for it. */
  minutes: number;
  /** What has to be prepared, with the minutes that preparing it and undoing that take: paid once while it holds. */
  setUp?: Readonly<Record<string, number>> | undefined;
  /** What has to be undone before. */
  undoes?: readonly string[] | undefined;
  outcomes: Record<string, OutcomeInput>;
  /** Ways to come to be allowed, like a proof; only the look-ahead asks. */
  needs?: readonly (readonly ProofStep[])[] | undefined;
};

export type OutcomeInput = {
  /** Likelihoods by cause, within 0 and 1, both exclusive; `otherwise` for causes not named. */
  says: Record<string, number>;
  /** Causes that the check puts right on the way to this outcome. */
  fixes?: readonly string[] | undefined;
  /** Hours of waiting that this outcome takes, such as a thaw. */
  hours?: number | undefined;
};

/** The same as plain tables, for a build to write down and a phone to read. */
export type Tables = {
  /** Likelihoods, within 0 and 1, both exclusive. */
  likelihoods: readonly number[];
  causes: readonly CauseInput[];
  /** In the trade's order. */
  checks: readonly CheckRow[];
};

export type CheckRow = Omit<CheckInput, "outcomes"> & { outcomes: readonly OutcomeRow[] };

/** `likely`: one sign of `signs` a cause, the place of its likelihood. */
export type OutcomeRow = Omit<OutcomeInput, "says"> & { id: string; likely: string };

/** How the places of likelihoods are written, one sign each. */
export const signs =
  "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ!#$%&()*+,-./:;<=>?@[]^_`{|}~";

/**
 * Lays the numbers out. A check with fewer than two outcomes says nothing and stays without any.
 *
 * @throws RangeError for a number out of range or more distinct likelihoods than signs, Error for a cause or check that
 * is not spoken of: faults of the data, which the verifier reports before anyone gets here
 */
export function tablesOf({ causes, checks }: ModelInput): Tables {
  const ids = new Set(checks.map(({ id }) => id));
  for (const { id, weight, proofs = [] } of causes) {
    if (!(weight > 0 && weight < Infinity)) throw new RangeError(`The prior of "${id}" must be above 0`);
    assertKnown(proofs, ids);
  }
  for (const { needs = [] } of checks) assertKnown(needs, ids);
  const places = new Map<number, number>();
  const signOf = (number: number) => {
    const place = places.get(number) ?? places.size;
    if (place >= signs.length) throw new RangeError(`More than ${signs.length} likelihoods`);
    places.set(number, place);
    return signs[place];
  };
  const rows = checks.map(({ outcomes, ...check }) => {
    const entries = Object.entries(outcomes);
    const spoken = entries.map(([id, { says, ...outcome }]) => {
      const signsOf = causes.map((cause) => {
        const number = says[cause.id] ?? says.otherwise;
        const place = `Check "${check.id}", outcome "${id}", cause "${cause.id}"`;
        if (number === undefined) throw new Error(`${place}: no likelihood`);
        if (!(number > 0 && number < 1)) throw new RangeError(`${place}: ${number} must lie between 0 and 1`);
        return signOf(number);
      });
      return { id, ...outcome, likely: signsOf.join("") };
    });
    return { ...check, outcomes: entries.length < 2 ? [] : spoken };
  });
  return { likelihoods: [...places.keys()], causes, checks: rows };
}

function assertKnown(ways: readonly (readonly ProofStep[])[], ids: ReadonlySet<string>): void {
  const lost = ways.flat().find(({ check }) => !ids.has(check));
  if (lost) throw new Error(`A proof names the check "${lost.check}", which does not exist`);
}
