import { brotliCompressSync } from "node:zlib";
import { readModel, understand } from "../../src/understanding/index.ts";
import { createAllWords } from "../../src/workbench/build/words-plugin.ts";
import { inKilobytes, tableOf } from "./table.ts";
import { methods } from "./words/methods.ts";
import { judgeOpenData, readOpenData } from "./words/open-data.ts";
import { contextOf, isTrained, judgeOwnData } from "./words/own-data.ts";
import { halves, judge, readUnseen } from "./words/unseen.ts";

/** Larson et al., EMNLP 2019, table 1, 'small': in-scope accuracy and out-of-scope recall, in percent. */
const published = [
  ["linear SVM", "89.6", "18.6"],
  ["fastText", "84.5", "23.2"],
  ["one toolkit", "89.4", "14.1"],
  ["another toolkit", "88.9", "55.0"],
  ["sentence-embedding network", "91.5", "52.2"],
];

const percent = (share: number) => (share * 100).toFixed(1);

/**
 * How well typed sentences are understood: `--open-data FILE` on an outside data set, `--methods` each method on our own
 * phrases, and always the engine as built on the sentences of tests/understanding/unseen.
 */
export async function benchWords(args: string[]): Promise<void> {
  const file = args[args.indexOf("--open-data") + 1];
  if (args.includes("--open-data") && !file)
    throw new Error("Give a file: npm run bench -- words --open-data FILE");
  const isAll = args.includes("--methods");
  const some = isAll ? methods : methods.slice(0, 1);
  if (args.includes("--open-data") && file) await printOpenData(file, some);
  if (isAll) await printMethods();
  printOwn();
}

async function printOpenData(file: string, some: typeof methods): Promise<void> {
  const data = readOpenData(file);
  const rows = [["outside data set, in percent", "in-scope accuracy", "out-of-scope recall"]];
  for (const method of some) {
    const { accuracy, recall } = await judgeOpenData(method, data);
    rows.push([method.name, percent(accuracy), percent(recall)]);
  }
  rows.push(...published.map(([name = "", ...figures]) => [`published: ${name}`, ...figures]));
  console.log(`${tableOf(rows)}\n`);
}

async function printMethods(): Promise<void> {
  const rows = [["our own phrases, right answer first among the turn's, in percent", "half one", "half two"]];
  for (const method of methods)
    rows.push([
      method.name,
      percent(await judgeOwnData(method, halves.one)),
      percent(await judgeOwnData(method, halves.two)),
    ]);
  console.log(`${tableOf(rows)}\n`);
}

type Totals = ReturnType<typeof judge>;

function printOwn(): void {
  const words = createAllWords();
  const { model: data } = words["en-GB"] as (typeof words)[string];
  const model = readModel(data);
  const read = (half: keyof typeof halves) =>
    judge(
      readUnseen(halves[half]),
      (sentence, context) => understand(model, sentence, context),
      contextOf,
      isTrained,
    );
  const all = [read("one"), read("four"), read("two"), read("three")];
  const rows: [string, keyof Totals, string][] = [
    ["right answer first", "first", "90"],
    ["right answer among three", "amongThree", "97"],
    ["dangers heard", "dangersHeard", "99"],
    ["false alarms on look-alikes", "falseAlarms", "5 at most"],
    ["false alarms on answers", "everydayAlarms", ""],
    ["side questions", "questions", "90"],
    ["unrelated left alone", "unrelated", "95"],
    ["facts beside the question", "facts", ""],
  ];
  console.log(
    tableOf([
      [
        "sentences written apart, in percent",
        "one, read",
        "four, read later",
        "two, never read",
        "three, never read",
        "goal",
      ],
      ...rows.map(([name, key, goal]) => [name, ...all.map((each) => percent(each[key])), goal]),
      ["taken silently and wrong, count", ...all.map((each) => `${each.silentlyWrong}`), "0"],
      [
        "answers, dangers, look-alikes, count",
        ...all.map((each) => `${each.answers}, ${each.dangers}, ${each.harmless}`),
        "",
      ],
    ]),
  );
  const sizes = Object.entries(words).map(
    ([tag, each]) => `${tag} ${inKilobytes(brotliCompressSync(JSON.stringify(each.model)).length)}`,
  );
  console.log(`\nmodels, brotli: ${sizes.join(", ")}`);
  console.log(`one sentence: ${sentenceMs(model).toFixed(2)} ms of processor time`);
}

/** Processor time of one sentence, in milliseconds: all of half one, after a first round. */
function sentenceMs(model: ReturnType<typeof readModel>): number {
  const sentences = readUnseen(halves.one).flatMap(({ answers }) =>
    Object.values(answers).flatMap((each) => Object.values(each)),
  );
  const context = contextOf("opening.symptom");
  const round = () => {
    for (const sentence of sentences) understand(model, sentence, context);
  };
  round();
  const before = process.cpuUsage();
  round();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / sentences.length;
}
