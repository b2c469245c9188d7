import type { Played } from "./play.ts";

/** What is compared: its name, its number for one home, and how a mean of it is written. */
type Figure = { name: string; of(one: Played): number; write(mean: number): string };

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const tenths = (mean: number) => mean.toFixed(2);

const figures: Figure[] = [
  { name: "ended right", of: ({ verdict }) => Number(verdict === "right"), write: percent },
  { name: "first cause named is right", of: ({ firstRight }) => Number(firstRight), write: percent },
  { name: "a wrong part", of: ({ wrongParts }) => wrongParts, write: percent },
  { name: "called needlessly", of: ({ verdict }) => Number(verdict === "needless"), write: percent },
  { name: "said fixed, and is not", of: ({ verdict }) => Number(verdict === "not-fixed"), write: percent },
  { name: "checks asked", of: ({ checks }) => checks, write: tenths },
  { name: "attention, minutes", of: ({ minutes }) => minutes, write: tenths },
];

/** A difference of means over the same homes, with its 95 % interval. */
export type Difference = { mean: number; half: number };

/** @param one numbers by home, @param other of the same homes in the same order */
export function differenceOf(one: readonly number[], other: readonly number[]): Difference {
  const apart = one.map((value, at) => value - (other[at] ?? 0));
  const mean = apart.reduce((sum, value) => sum + value, 0) / apart.length;
  const squares = apart.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, half: 1.96 * Math.sqrt(squares / (apart.length - 1) / apart.length) };
}

/** Rows of a table: each figure without and with what was learnt, and the difference. */
export function compare(without: readonly Played[], learnt: readonly Played[]): string[][] {
  const meanOf = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0) / numbers.length;
  return figures.map(({ name, of, write }) => {
    const [before, after] = [without.map(of), learnt.map(of)];
    const { mean, half } = differenceOf(after, before);
    const signed = (value: number) => `${value < 0 ? "−" : "+"}${write(Math.abs(value))}`;
    return [name, write(meanOf(before)), write(meanOf(after)), `${signed(mean)} (± ${write(half)})`];
  });
}
