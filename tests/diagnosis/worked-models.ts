import {
  type CauseInput,
  type CheckInput,
  createModel,
  type Model,
  type ModelInput,
  type Stakes,
  type State,
} from "../../src/diagnosis/index.ts";

/** A model whose causes are a householder's to put right unless said otherwise. */
export type Numbers = {
  causes: (Omit<CauseInput, "remedy"> & { remedy?: CauseInput["remedy"] })[];
  checks: CheckInput[];
};

export const inputOf = ({ causes, checks }: Numbers): ModelInput => ({
  causes: causes.map((cause) => ({ remedy: "self", ...cause })),
  checks,
});

export const modelOf = (numbers: Numbers): Model => createModel(inputOf(numbers));

/** Hardly ever wrong: a test as perfect as likelihoods may be. */
export const sure = 1 - 1e-9;

/**
 * Causes with a perfect check and repair each, as in Heckerman, Breese & Rommelse 1995: probabilities and costs in
 * the same order, cause and check "1" first.
 */
export function perfectChecks(p: readonly number[], costs: readonly number[]): Model {
  return modelOf({
    causes: p.map((weight, at) => ({ id: `${at + 1}`, weight })),
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
