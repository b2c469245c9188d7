import { createHash } from "node:crypto";
import remapping, { type SourceMapInput } from "@jridgewell/remapping";
import MagicString, { Bundle } from "magic-string";
import type { OwnFile } from "../own-files/index.ts";
import {
  type BuiltFile,
  beforeDoor,
  firstChunk,
  firstFileOf,
  laterChunks,
  placeOf,
  textsPath,
  textsPlace,
} from "./chunks.ts";

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

  const addresses = new Map(
    pieces.flatMap(({ chunk, path }) => [
      [`/${baseOf(path)}`, `/${chunk}-${digestPlace}.js`],
      [placeOf(chunk), `parts/${chunk}-${digestPlace}.js`],
    ]),
  );
  const tie = (piece: Piece, digest: string): MagicString => {
    const { chunk } = piece;
    const tied = (all: string, imported?: string, from?: string, exported?: string): string => {
      if (from !== undefined) {
        const of = byName.get(baseOf(from)) as Piece;
        return imported ? `const{${imported.replace(/ as /g, ":")}}=${table}.${nameIn(of)};` : "";
      }
      if (exported === undefined) return addresses.get(all) ?? all;
      const given = exported.replace(/([\w$]+) as ([\w$]+)/g, "$2:$1");
      const own =
        chunk === firstChunk ? `export{${/[\w$]+ as loadParts/.exec(exported)?.[0]}};` : isFile(piece) && all;
      return `(${table}??={}).${nameIn(piece)}??={${given}};${own || ""}`;
    };
    return new MagicString(piece.content.toString(), { filename: piece.path }).replace(toTie, (...found) =>
      tied(...(found as [string])).replaceAll(digestPlace, digest),
    );
  };
  /** A file with what it needs besides, for one language where it holds its texts. */
  const whole = (piece: Piece, digest: string, texts?: string): Bundle => {
    const there = thereFor(piece);
    const besides = [...neededBy(piece)].filter((each) => !there.has(each));
    const bundle = new Bundle({ separator: "" });
    for (const each of besides) bundle.addSource(tie(each, digest).prepend("(()=>{").append("})();"));
    const own = tie(piece, digest);
    return bundle.addSource(texts === undefined ? own : own.replace(place, () => texts));
  };

  const texts = built.flatMap(({ path, content }) => {
    const language = textsPath.exec(path)?.[1];
    return language ? [{ language, content: content.toString() }] : [];
  });
  const files = pieces.filter(isFile);
  const digest = digestOf(files.map((piece) => whole(piece, digestPlace).toString()).join());
  const fileOf = (path: string, bundle: Bundle): BuiltFile => ({
    path,
    content: bundle.toString(),
    ...mapOf(path, bundle, pieces),
  });
  return [
    ...built.filter((file) => file.chunk === undefined),
    ...files.flatMap((piece) => {
      if (piece.chunk !== firstChunk)
        return [fileOf(`parts/${piece.chunk}-${digest}.js`, whole(piece, digest))];
      return texts.map(({ language, content }) =>
        fileOf(firstFileOf(language), whole(piece, digest, content)),
      );
    }),
  ];
}

/** The source map of what was tied together, where the bundler made one for each piece. */
function mapOf(path: string, bundle: Bundle, pieces: Piece[]): Pick<BuiltFile, "map"> {
  const maps = new Map(pieces.map((piece) => [piece.path, piece.map]));
  if (![...maps.values()].some(Boolean)) return {};
  const tied = bundle.generateMap({ file: baseOf(path), hires: true });
  const map = remapping(
    tied as SourceMapInput,
    (source) => (maps.get(source) ?? null) as SourceMapInput | null,
  );
  return { map: map.toString() };
}

/** Stands where the digest of all script belongs, until all of it is tied together. */
const digestPlace = "digest-of-all";

type Piece = BuiltFile & { chunk: string };

/** A static import as the bundler writes it: what, if anything, and from where. */
const importOf = /import(?:{([^}]*)}from)?"([^"]*)";/g;

/** What a piece gives, at its end. */
const exportOf = /export{([^}]*)};?\s*$/;

/** What is rewritten in a piece: those two, the other pieces' addresses, and what stands for them. */
const toTie = new RegExp(`${importOf.source}|${exportOf.source}|/[\\w-]+\\.js|${placeOf("[\\w-]+")}`, "g");

/** Where the first file has its language's texts. */
const place = new RegExp(`{place:["'\`]${textsPlace}["'\`]}`);

const baseOf = (path: string) => path.slice(path.lastIndexOf("/") + 1);

const digestOf = (source: string) => createHash("sha256").update(source).digest("hex").slice(0, 8);
