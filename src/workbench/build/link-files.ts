import { createHash } from "node:crypto";
import type { OwnFile } from "../own-files/index.ts";

/** A file as the bundler made it; `chunk` is the name of a piece of script. */
export type BuiltFile = OwnFile & { chunk?: string };

/** The first file's chunk, of which one copy a language is made. */
export const firstChunk = "first";

/** The chunks that the script may have to ask for a second time, at an address that it makes up. */
export const laterChunks = ["engine", "later-screens", "shop"];

/** Stands in the script where the address of a chunk belongs, until it has its name. */
export const placeOf = (chunk: string) => `chunk:${chunk}`;

/** Stands in the first file where a language's own texts belong. */
export const textsPlace = "texts-of-this-language";

/** What a language's texts for the first file are called, for tags in another language than their first file. */
export const textsPath = /^parts\/first-([\w-]+)-[0-9a-f]{8}\.json$/;

/** A first file's name; it stays, all others are named by their content. */
export const firstFileOf = (language: string) => `fridgeside.${language}.js`;

/**
 * Ties the pieces of script together and makes one first file a language. A static import would name one first file,
 * and after a deploy a page may have an older one under that name: so each piece puts what it exports into a table
 * that is named by the content of all, and takes what it imports from there. What was loaded first stays: a page may
 * load two languages, or a piece again after a fault.
 * @throws Error where a piece imports statically from one that nothing has loaded by then
 */
export function linkFiles(built: BuiltFile[]): OwnFile[] {
  const script = built.filter((file) => file.chunk !== undefined);
  const digest = digestOf(script.map(({ content }) => content).join());
  const names = new Map(
    script.map(({ path, chunk }) => [path.replace(/.*\//, ""), { chunk, name: `${chunk}-${digest}.js` }]),
  );
  const table = `globalThis[Symbol.for("fridgeside-${digest}")]`;
  const link = ({ chunk, content }: BuiltFile) => {
    let code = content.toString().replace(/import{([^}]*)}from"([^"]*)";/g, (_, list, from) => {
      const of = names.get(from.replace(/.*\//, ""))?.chunk;
      // Whoever asks for a piece of script was asked for by one of these.
      if (of !== firstChunk && of !== "engine") throw new Error(`${chunk} needs ${from} before it can run`);
      return `const{${list.replace(/ as /g, ":")}}=${table}.${of};`;
    });
    if (/\bimport(["{*]|\s)/.test(code.slice(0, 2000)) && /^import[\s{"*]/m.test(code))
      throw new Error(`${chunk} has an import that is not understood`);
    code = code.replace(/export{([^}]*)};?\s*$/, (all, list: string) => {
      const kept = chunk === firstChunk ? (/[\w$]+ as loadParts/.exec(list) ?? [""])[0] : list;
      const given = list.replace(/([\w$]+) as ([\w$]+)/g, "$2:$1");
      return `(${table}??={}).${chunk?.replace(/\W/g, "_")}??={${given}};${kept ? `export{${kept}};` : all}`;
    });
    for (const [old, { chunk: other = "", name }] of names)
      code = code.replaceAll(`/${old}`, `/${name}`).replaceAll(placeOf(other), `parts/${name}`);
    return code;
  };
  const texts = built.flatMap(({ path, content }) => {
    const language = textsPath.exec(path)?.[1];
    return language ? [{ language, content: content.toString() }] : [];
  });
  return script
    .flatMap((file): OwnFile[] => {
      const code = link(file);
      if (file.chunk !== firstChunk) return [{ path: `parts/${file.chunk}-${digest}.js`, content: code }];
      return texts.map(({ language, content }) => ({
        path: firstFileOf(language),
        content: code.replace(new RegExp(`{place:["'\`]${textsPlace}["'\`]}`), () => content),
      }));
    })
    .concat(built.filter((file) => file.chunk === undefined));
}

const digestOf = (source: string) => createHash("sha256").update(source).digest("hex").slice(0, 8);
