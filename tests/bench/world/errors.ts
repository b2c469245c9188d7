import type { Scene, Way } from "./scene.ts";

/*
 * Misread: one look in six to eight; ears and fingers a little worse. Not sure: one in ten. What came of one's own
 * doing is plain. All judgement; no study of householders at fridges was found.
 */
const misread: Record<Way, number> = {
  look: 0.15,
  listen: 0.18,
  feel: 0.18,
  recall: 0.13,
  do: 0.04,
  result: 0.02,
  plain: 0,
};
const unsure: Record<Way, number> = {
  look: 0.1,
  listen: 0.13,
  feel: 0.13,
  recall: 0.12,
  do: 0.03,
  result: 0.02,
  plain: 0,
};
/** Asked again about the same spot they slip the same way that often, and else less than a stranger. */
const sameAgain = 0.6;
/** Of what is wrong, that often overlooked rather than taken for another thing: the first answer that says 'in order'. */
const overlooked = 0.6;

/** The answer that these people give where `true` is the right one among a turn's `own` answers. */
export function said(scene: Scene, turn: string, way: Way, truth: string, own: readonly string[]): string {
  const { person, perfect, chance, slipped } = scene;
  if (perfect || way === "plain") return truth;
  if (chance() < Math.min(0.5, unsure[way] * person.doubts)) return "not-sure";
  const before = slipped.get(turn);
  if (before && before !== truth && own.includes(before) && chance() < sameAgain) return before;
  const seen = slipped.has(turn) ? 0.5 : 1;
  if (chance() >= Math.min(0.45, misread[way] * person.slips * seen)) {
    if (!slipped.has(turn)) slipped.set(turn, truth);
    return truth;
  }
  const others = own.filter((id) => id !== truth && !isImpossible(id));
  const [usual] = own;
  if (!others.length || !usual) return truth;
  const wrong =
    truth !== usual && others.includes(usual) && chance() < overlooked
      ? usual
      : (others[Math.floor(chance() * others.length)] ?? truth);
  slipped.set(turn, wrong);
  return wrong;
}

/** A machine without a chute is not taken for one with it, and nobody sees ice come that does not. */
const isImpossible = (id: string) =>
  /^no-(chute|grille|switch|dispenser|plug|lock|water-there|button)$|^none$|^comes$|^water-(comes|now)$/.test(
    id,
  );
