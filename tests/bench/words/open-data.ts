import { readFileSync } from "node:fs";
import type { Method, Scores, Sentence } from "./methods.ts";

/** Sentences with their label, as the parts of the data set are called. */
type Part = [text: string, label: string][];
type OpenData = Record<"train" | "val" | "test" | "oos_train" | "oos_val" | "oos_test", Part>;

/** What a threshold may cost: so much of the validation part's accuracy. */
const MAY_COST = 0.01;

/** Reads the data set. @throws Error where the file is another one */
export function readOpenData(file: string): OpenData {
  const data = JSON.parse(readFileSync(file, "utf8"));
  const parts = ["train", "val", "test", "oos_train", "oos_val", "oos_test"];
  const missing = parts.filter((part) => !Array.isArray(data[part]));
  if (missing.length)
    throw new Error(`${file} has no ${missing.join(", ")}: give the data set's "small" file`);
  return data;
}

/**
 * In-scope accuracy and out-of-scope recall on the test part. What scores below a threshold is taken for out of scope;
 * the threshold is chosen on the validation part alone: the highest that costs a hundredth of its accuracy.
 */
export async function judgeOpenData(method: Method, data: OpenData) {
  const labelled = (part: Part): Sentence[] => part.map(([text, label]) => ({ text, label }));
  const train = [...labelled(data.train), ...data.oos_train.map(([text]) => ({ text, label: null }))];
  const scores = await method.train(train);
  const validation = await bestOf(scores, data.val);
  const right = (all: typeof validation, least: number) =>
    all.filter(({ isRight, score }) => isRight && score >= least).length / all.length;
  const most = right(validation, Number.NEGATIVE_INFINITY);
  const least = validation
    .map(({ score }) => score)
    .sort((a, b) => b - a)
    .find((score) => right(validation, score) >= most - MAY_COST) as number;
  const test = await bestOf(scores, data.test);
  const outside = await bestOf(scores, data.oos_test);
  return {
    accuracy: right(test, least),
    recall: outside.filter(({ score }) => score < least).length / outside.length,
    withoutThreshold: right(test, Number.NEGATIVE_INFINITY),
  };
}

async function bestOf(scores: Scores, part: Part) {
  const found = [];
  for (const [text, label] of part) {
    const [best = ["", -1] as const] = [...(await scores(text))]
      .filter(([each]) => each !== "None")
      .sort(([, a], [, b]) => b - a);
    found.push({ isRight: best[0] === label, score: best[1] });
  }
  return found;
}
