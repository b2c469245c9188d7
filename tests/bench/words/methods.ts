import { seeded, trainLabel } from "../../../src/training/index.ts";
import { type Features, featuresOf, wordsOf } from "../../../src/understanding/index.ts";

export type Sentence = { text: string; label: string | null };
/** How much a sentence speaks for each label. Labels that are left out are not spoken for at all. */
export type Scores = (text: string) => Promise<Map<string, number>> | Map<string, number>;
/** A way to learn labels from sentences; a label of null is none of them. */
export type Method = { name: string; train(sentences: readonly Sentence[]): Promise<Scores> | Scores };

const BUCKETS = 2 ** 17;
const SEED = 20_261_127;
const BELONGS = 4;

const read = (text: string) => featuresOf(wordsOf(text), BUCKETS);
const labelsOf = (sentences: readonly Sentence[]) => [
  ...new Set(sentences.flatMap(({ label }) => label ?? [])),
];

/** Our own: the pieces of src/understanding and the trainer of src/compile/training, nothing left out. */
export const linear: Method = {
  name: "linear over word and character n-grams",
  train(sentences) {
    const all = sentences.map(({ text, label }) => ({ features: read(text), label }));
    const trained = labelsOf(sentences).map((label) => {
      const examples = all.map((one) => ({
        features: one.features,
        weight: one.label === label ? BELONGS : -1,
      }));
      const { weights, bias } = trainLabel(examples, BUCKETS, seeded(SEED));
      return { label, weights: Float32Array.from(weights), bias };
    });
    return (text) => {
      const { ids, weights } = read(text);
      return new Map(
        trained.map(({ label, weights: own, bias }) => [
          label,
          ids.reduce((sum, id, at) => sum + (own[id] ?? 0) * (weights[at] ?? 0), bias),
        ]),
      );
    };
  },
};

/** The label of the nearest sentence, by the cosine of the same pieces. */
export const nearest: Method = {
  name: "nearest phrase",
  train(sentences) {
    const index = new Map<number, [sentence: number, weight: number][]>();
    for (const [place, { text }] of sentences.entries()) {
      const { ids, weights }: Features = read(text);
      for (const [at, id] of ids.entries()) {
        const list = index.get(id) ?? [];
        list.push([place, weights[at] ?? 0]);
        index.set(id, list);
      }
    }
    return (text) => {
      const { ids, weights } = read(text);
      const near = new Float64Array(sentences.length);
      for (const [at, id] of ids.entries())
        for (const [place, weight] of index.get(id) ?? [])
          near[place] = (near[place] ?? 0) + weight * (weights[at] ?? 0);
      const best = new Map<string, number>();
      for (const [place, { label }] of sentences.entries())
        if (label !== null) best.set(label, Math.max(best.get(label) ?? -1, near[place] ?? 0));
      return best;
    };
  },
};

/** What is used of the library, which has no types of its own. */
type Container = { use(plugin: unknown): void };
type Network = {
  train(corpus: { utterance: string; intent: string }[]): Promise<unknown>;
  process(text: string): Promise<{ classifications: { intent: string; score: number }[] }>;
};
const load = async <Module>(name: string) => (await import(name)) as Module;

/** A published library: its one-layer network over stems (MIT). */
export const library: Method = {
  name: "@nlpjs/nlu 4.27.0",
  async train(sentences) {
    const { containerBootstrap } = await load<{ containerBootstrap(): Promise<Container> }>("@nlpjs/core");
    const { LangEn } = await load<{ LangEn: unknown }>("@nlpjs/lang-en-min");
    const { NluNeural } = await load<{ NluNeural: new (settings: object) => Network }>("@nlpjs/nlu");
    const container = await containerBootstrap();
    container.use(LangEn);
    const nlu = new NluNeural({ locale: "en", container, settings: { log: () => {} } });
    await nlu.train(sentences.map(({ text, label }) => ({ utterance: text, intent: label ?? "None" })));
    return async (text) => {
      const { classifications } = await nlu.process(text);
      return new Map(classifications.map(({ intent, score }) => [intent, score]));
    };
  },
};

export const methods = [linear, nearest, library];
