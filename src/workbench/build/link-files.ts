import { createHash } from "node:crypto";
import type { OwnFile } from "../own-files/index.ts";

/** A file as the bundler made it; `chunk` is the name of a piece of script. */
export type BuiltFile = OwnFile & { chunk?: string };

/** The first file's chunk, of which one copy a language is made. */
export const firstChunk = "first";

/** The files that are asked for when they are near; some of them a second time, at an address that is made up. */
export const laterChunks = [
  "engine",
  "later-screens",
  "door",
  "shop",
  "for-some-shops",
  "photo",
  "words",
  "cut-open",
  "carry",
  "live",
  "live-screens",
  "care-screens",
  "insight",
  "dress",
];

/** Those that may come before the door has. */
const beforeDoor = ["later-screens", "cut-open", "live", "live-screens", "care-screens", "insight", "dress"];

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
 * load two languages, or a piece again after a fault. What several files need goes into the engine, or where that
 * does not need it into each of them: no file waits for another.
 */
export function linkFiles(built: BuiltFile[]): OwnFile[] {
  const pieces = built.filter((file): file is Piece => file.chunk !== undefined);
  const table = `globalThis[Symbol.for("fridgeside-${digestPlace}")]`;
  const byName = new Map(pieces.map((piece) => [baseOf(piece.path), piece]));
  /** Two pieces may be called the same by the bundler, and may not take each other's place. */
  const nameIn = (piece: Piece) => {
    const place = pieces.filter(({ chunk }) => chunk === piece.chunk).indexOf(piece);
    return `${piece.chunk.replace(/\W/g, "_")}${place || ""}`;
  };
  const isFile = ({ chunk }: Piece) => chunk === firstChunk || laterChunks.includes(chunk);

  /** What a piece imports before it can run, and what that imports, in the order in which they can run. */
  const neededBy = (piece: Piece, found = new Set<Piece>()): Set<Piece> => {
    for (const [, , from = ""] of piece.content.toString().matchAll(importOf)) {
      const needed = byName.get(baseOf(from));
      if (!needed) throw new Error(`${piece.chunk} imports ${from}, which was not built`);
      if (!isFile(needed) && !found.has(needed)) neededBy(needed, found).add(needed);
    }
    return found;
  };
  /** What is there already when a piece comes: the first file, the engine, and for what checks data the door. */
  const thereFor = ({ chunk }: Piece): Set<Piece> => {
    const order = [firstChunk, "engine", ...(beforeDoor.includes(chunk) ? [] : ["door"]), chunk];
    const before = order.slice(0, order.indexOf(chunk));
    return new Set(
      pieces.filter((each) => before.includes(each.chunk)).flatMap((each) => [...neededBy(each)]),
    );
  };

  const tie = (piece: Piece): string => {
    const { chunk } = piece;
    let code = piece.content
      .toString()
      .replace(importOf, (_, list: string | undefined, from: string) => {
        const of = byName.get(baseOf(from)) as Piece;
        if (!list) return "";
        return `const{${list.replace(/ as /g, ":")}}=${table}.${nameIn(of)};`;
      })
      .replace(/export{([^}]*)};?\s*$/, (all, list: string) => {
        const given = list.replace(/([\w$]+) as ([\w$]+)/g, "$2:$1");
        const own =
          chunk === firstChunk ? `export{${/[\w$]+ as loadParts/.exec(list)?.[0]}};` : isFile(piece) && all;
        return `(${table}??={}).${nameIn(piece)}??={${given}};${own || ""}`;
      });
    for (const { chunk: other, path } of pieces)
      code = code
        .replaceAll(`/${baseOf(path)}`, `/${other}-${digestPlace}.js`)
        .replaceAll(placeOf(other), `parts/${other}-${digestPlace}.js`);
    return code;
  };
  const whole = (piece: Piece): string => {
    const there = thereFor(piece);
    const besides = [...neededBy(piece)].filter((each) => !there.has(each));
    return [...besides.map((each) => `(()=>{${tie(each)}})();`), tie(piece)].join("");
  };

  const texts = built.flatMap(({ path, content }) => {
    const language = textsPath.exec(path)?.[1];
    return language ? [{ language, content: content.toString() }] : [];
  });
  const place = new RegExp(`{place:["'\`]${textsPlace}["'\`]}`);
  const tied = pieces.filter(isFile).map((piece) => ({ chunk: piece.chunk, code: whole(piece) }));
  const digest = digestOf(tied.map(({ code }) => code).join());
  return [
    ...built.filter((file) => file.chunk === undefined),
    ...tied.flatMap(({ chunk, code: open }): OwnFile[] => {
      const code = open.replaceAll(digestPlace, digest);
      if (chunk !== firstChunk) return [{ path: `parts/${chunk}-${digest}.js`, content: code }];
      return texts.map(({ language, content }) => ({
        path: firstFileOf(language),
        content: code.replace(place, () => content),
      }));
    }),
  ];
}

/** Stands where the digest of all script belongs, until all of it is tied together. */
const digestPlace = "digest-of-all";

type Piece = BuiltFile & { chunk: string };

/** A static import as the bundler writes it: what, if anything, and from where. */
const importOf = /import(?:{([^}]*)}from)?"([^"]*)";/g;

const baseOf = (path: string) => path.slice(path.lastIndexOf("/") + 1);

const digestOf = (source: string) => createHash("sha256").update(source).digest("hex").slice(0, 8);
