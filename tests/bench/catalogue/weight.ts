import { readFileSync } from "node:fs";
import { promisify } from "node:util";
import { brotliCompress, constants } from "node:zlib";

const compress = promisify(brotliCompress);

/** Bytes of a file as it lies, and as a web server sends it: brotli made on the way (5) or beforehand (11). */
export type Weight = { raw: number; quick: number; best: number };

/** Weighs files; what was weighed is kept, because the best brotli takes its time. */
export function createScales() {
  const known = new Map<string, Promise<Weight>>();
  async function weigh(path: string): Promise<Weight> {
    const content = readFileSync(path);
    const at = async (quality: number) => {
      const params = {
        [constants.BROTLI_PARAM_QUALITY]: quality,
        [constants.BROTLI_PARAM_SIZE_HINT]: content.length,
      };
      return (await compress(content, { params })).length;
    };
    return { raw: content.length, quick: await at(5), best: await at(11) };
  }
  return (path: string): Promise<Weight> => {
    const weight = known.get(path) ?? weigh(path);
    known.set(path, weight);
    return weight;
  };
}

/** Does some work for each of a list, a few at a time, so that all processors have some. */
export async function forEachOf<T, Result>(list: readonly T[], work: (item: T) => Promise<Result>) {
  const results: Result[] = [];
  let next = 0;
  const worker = async () => {
    for (let at = next++; at < list.length; at = next++) results[at] = await work(list[at] as T);
  };
  await Promise.all([worker(), worker(), worker(), worker()]);
  return results;
}

export const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);
