import {
  type CauseInput,
  type CheckInput,
  createModel,
  type Model,
  type ModelInput,
  type Stakes,
  type State,
} from "../../src/diagnosis/index.ts";

/** A model in numbers: each number becomes a word of its own. */
export type Numbers = {
  causes: (Omit<CauseInput, "prior" | "remedy"> & { prior: number; remedy?: CauseInput["remedy"] })[];
  checks: (Omit<CheckInput, "outcomes"> & {
    outcomes: Record<string, { says: Record<string, number>; fixes?: string[]; hours?: number }>;
  })[];
};

export function inWords({ causes, checks }: Numbers): ModelInput {
  const words = { likelihood: {} as Record<string, number>, prior: {} as Record<string, number> };
  const word = (table: Record<string, number>, value: number) => {
    table[`${value}`] = value;
    return `${value}`;
  };
  return {
    words,
    causes: causes.map((cause) => ({ remedy: "self", ...cause, prior: word(words.prior, cause.prior) })),
    checks: checks.map((check) => ({
      ...check,
      outcomes: Object.fromEntries(
        Object.entries(check.outcomes).map(([id, { says, ...rest }]) => [
          id,
          {
            ...rest,
            says: Object.fromEntries(
              Object.entries(says).map(([cause, p]) => [cause, word(words.likelihood, p)]),
            ),
          },
        ]),
      ),
    })),
  };
}

export const modelOf = (numbers: Numbers): Model => createModel(inWords(numbers));

/** Hardly ever wrong: a test as perfect as likelihoods may be. */
export const sure = 1 - 1e-9;

/**
 * Causes with a perfect check and repair each, as in Heckerman, Breese & Rommelse 1995: probabilities and costs in
 * the same order, cause and check "1" first.
 */
export function perfectChecks(p: readonly number[], costs: readonly number[]): Model {
  return modelOf({
    causes: p.map((prior, at) => ({ id: `${at + 1}`, prior })),
    checks: costs.map((minutes, at) => ({
      id: `${at + 1}`,
      minutes,
      outcomes: {
        found: { says: { [`${at + 1}`]: sure, otherwise: 1 - sure }, fixes: [`${at + 1}`] },
        sound: { says: { [`${at + 1}`]: 1 - sure, otherwise: sure } },
      },
    })),
  });
}

/** Stakes under which only checks cost anything, and nothing but finding the cause ends a search well. */
export const onlyChecks: Stakes = {
  minute: 1,
  hour: 0,
  wrongPart: 1e6,
  callOut: 1e6,
  secondVisit: 1e6,
  waitHours: 24,
  waitMinutes: 0,
  success: sure,
  sameLook: 0.5,
  belief: 0.6,
  beliefDue: 0.4,
};

/** Stakes of the size that the flows use, in minutes. */
export const everyday: Stakes = {
  ...onlyChecks,
  hour: 2,
  wrongPart: 150,
  callOut: 400,
  secondVisit: 60,
  waitMinutes: 1,
  success: 0.98,
};

export const atStart: State = { done: [], proven: [], due: [], fixed: [], mayWait: true };

/** All orders of a list, in lexicographic order of places. */
export function permutations<T>(list: readonly T[]): T[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, at) =>
    permutations([...list.slice(0, at), ...list.slice(at + 1)]).map((rest) => [one, ...rest]),
  );
}
