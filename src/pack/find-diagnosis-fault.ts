import type { Subject } from "../advice/index.ts";
import { signs } from "../diagnosis/index.ts";

/** The first name or number that keeps a scenario's tables from being reckoned with, as half a sentence; else null. */
export function findDiagnosisFault(id: string, { diagnosis, flow }: Subject): string | null {
  const { tables, openings, proofs, moves } = diagnosis;
  const { causes, checks, likelihoods } = tables;
  const checkIds = new Set(checks.map((check) => check.id));
  const causeIds = new Set(causes.map((cause) => cause.id));
  const say = (name: string) => `names "${name}" in the diagnosis of ${id}, which it does not have`;
  const stray = [...causeIds, ...proofs].find((cause) => !Object.hasOwn(flow.causes, cause));
  if (stray) return say(stray);
  const ways = [...causes.flatMap(({ proofs = [] }) => proofs), ...checks.flatMap(({ needs = [] }) => needs)];
  const lost = ways.flat().find(({ check }) => !checkIds.has(check));
  if (lost) return say(lost.check);
  for (const check of checks)
    for (const { id: outcome, likely } of check.outcomes) {
      const isRight =
        likely.length === causes.length &&
        [...likely].every((sign) => signs.includes(sign) && signs.indexOf(sign) < likelihoods.length);
      if (!isRight) return `gives the outcome ${check.id}.${outcome} numbers that no belief can reckon with`;
    }
  const { models, entries } = openings;
  const isOff =
    Object.values(entries).some((place) => models[place] === undefined) ||
    models.some(
      (model) =>
        model.weights.length !== model.causes.length ||
        model.causes.some((place) => place >= causes.length) ||
        model.checks.some((place) => place >= checks.length),
    );
  if (isOff) return `has openings of ${id} that lead beside its tables`;
  return moves.length ? null : `asks nothing in ${id}`;
}
