import { posix } from "node:path";
import { arrows, impurities, packages, pure } from "./arrows.ts";
import { codeOf, readImports } from "./read-imports.ts";
import type { SourceFile } from "./source-files.ts";

/** The part of src/ that a path belongs to, or null outside of them. */
export function partOf(path: string): string | null {
  if (/^src\/instruments\/.*\.tsx$/.test(path)) return "screens of instruments";
  const within = (part: string) => path.startsWith(`src/${part}/`);
  return Object.keys(arrows).find(within) ?? null;
}

/** Every import of a file in src/ that the arrows forbid, each with its reason. */
export function findForbiddenImports({ path, source }: SourceFile): string[] {
  const part = partOf(path);
  if (!part) return [`${path} lies in no part of the design: src/ has ${Object.keys(arrows).join(", ")}`];
  return readImports(source).flatMap(({ from, clause }) => {
    const why = from.startsWith(".") ? whyNotFile(path, part, from) : whyNotPackage(part, from, clause);
    return why ? [`${path} imports "${from}": ${why}`] : [];
  });
}

function whyNotFile(path: string, part: string, from: string): string | null {
  const target = posix.join(posix.dirname(path), from.replace(/\?.*$/, ""));
  if (target.startsWith("demo/")) return "the demo uses the product, and is no part of it";
  if (!target.startsWith("src/"))
    return part === "cli" || part.startsWith("workbench/")
      ? null
      : "flows, texts and demo data reach the other parts as arguments, never as files";
  const other = partOf(target);
  if (!other) return "no part of the design lies there";
  const arrow = arrows[part];
  if (other !== part && !arrow?.to.includes(other)) return `${part} may not know ${other}: ${arrow?.because}`;
  const folder = posix.dirname(target);
  const inside = posix.dirname(path) === folder || path.startsWith(`${folder}/`);
  if (!inside && !isDoor(target))
    return `a folder is imported by its door, ${folder}/index.ts; what lies behind it is its own business`;
  if (!/\.\w+$/.test(target)) return "say the file's ending, so that every tool finds the same file";
  return null;
}

/**
 * The doors of the design. What an instrument is, the shape of its readings and its screen have one each, and a list
 * each that names all instruments: who wants one of them does not load the others.
 */
function isDoor(path: string): boolean {
  const ofInstruments = /^src\/instruments\/([\w-]+\/(reading|screen)|readings|screens)\.tsx?$/;
  return /\/index\.tsx?$/.test(path) || ofInstruments.test(path);
}

function whyNotPackage(part: string, from: string, clause: string): string | null {
  if (from === "zod") return "all of zod is 93 kB; `import * as z from 'zod/mini'` is 6 (minified, gzip)";
  const name = Object.keys(packages).find(
    (one) => from === one || from.startsWith(one.endsWith(":") ? one : `${one}/`),
  );
  const rule = name ? packages[name] : undefined;
  if (!rule) return "this package is none that the design has: the script's size is a promise";
  if (!rule.to.includes(part)) return `${name} belongs to ${rule.to.join(" and ")}: ${rule.because}`;
  // The star import of types alone leaves nothing behind in the script.
  if (from === "zod/mini" && !/^(type )?\* as z$/.test(clause))
    return "only the star import leaves out what is not used";
  return null;
}

/** What a file of a pure part touches that it must not, each with its reason. */
export function findImpurities({ path, source }: SourceFile): string[] {
  if (!pure.includes(partOf(path) ?? "")) return [];
  const code = codeOf(source);
  return impurities.flatMap(([pattern, because]) => {
    const found = pattern.exec(code)?.[0];
    return found ? [`${path} mentions ${found}: ${because}`] : [];
  });
}
