import { createHash } from "node:crypto";
import type { Plugin } from "vite";

/** Stands in the first file where the address of the second engine belongs, until that is known. */
export const againPlace = "parts/engine-again";

/**
 * Writes the later files a second time, tied to a copy of the first file that is named by its content. They take
 * their libraries from `../fridgeside.js`, and a page that has an older one of that name would give them the wrong ones;
 * the second set is what an older first file goes on with after a deploy, and what is asked for where the first
 * could not be read.
 */
export function againPlugin(): Plugin {
  return {
    name: "fridgeside-again",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const chunks = Object.values(bundle).filter((each) => each.type === "chunk");
        const first = chunks.find(({ fileName }) => fileName === "fridgeside.js");
        const later = chunks.filter((each) => each !== first);
        const engine = later.find(({ name }) => name === "engine");
        if (!first || !engine) throw new Error("The build has no first file or no engine");
        const emit = (fileName: string, source: string) => this.emitFile({ type: "asset", fileName, source });
        // The copy lies in parts/ itself.
        const copied = first.code.replace(/(["'`])(?:\.\/)?parts\//g, "$1./");
        const copy = `first-again-${digestOf(copied)}.js`;
        emit(`parts/${copy}`, copied);
        // The later files name each other: one digest of all of them stands for each.
        const digest = digestOf([copy, ...later.map(({ code }) => code)].join());
        const names = later.map(
          ({ name, fileName }) => [baseOf(fileName), `${name}-again-${digest}.js`] as const,
        );
        for (const [place, { code }] of later.entries()) {
          const tied = names.reduce(
            (text, [old, again]) => text.replaceAll(`./${old}`, `./${again}`),
            code.replaceAll("../fridgeside.js", `./${copy}`),
          );
          emit(`parts/${names[place]?.[1]}`, tied);
        }
        first.code = first.code.replace(againPlace, `parts/engine-again-${digest}.js`);
      },
    },
  };
}

const baseOf = (path: string) => path.slice(path.lastIndexOf("/") + 1);

const digestOf = (source: string) => createHash("sha256").update(source).digest("hex").slice(0, 8);
