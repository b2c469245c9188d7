import * as z from "zod/mini";
import { type FileKind, fileSchemas, type Path } from "../../guide/index.ts";
import { nearest } from "./suggest.ts";
import type { Fault } from "./words.ts";

export type Issue = z.core.$ZodIssue;

/** zod's own English, for whatever needs no suggestion. */
export const inEnglish = { error: z.locales.en().localeError };

/** What is wrong with a value; several faults where several keys are. */
export function faultsOf(
  issue: Issue,
  value: unknown,
  missing: boolean,
  file: string,
  kind: FileKind,
): Fault[] {
  const path = issue.path as Path;
  const last = path.at(-1);
  if (kind === "limits" && last === "source" && (missing || typeof value === "string"))
    return [{ code: "limit-without-source", file, path, id: String(path[0]) }];
  if (missing) return [{ code: "missing-key", file, path }];
  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.map((key) => unknownKey(file, path, key, keysAt(fileSchemas[kind], path)));
    case "invalid_value":
      return [choice(file, path, value, issue.values.map(String))];
    case "invalid_union":
      return [unfit(file, path, value, issue.errors)];
    case "invalid_key":
      return [{ code: "wrong-value", file, path, why: issue.issues[0]?.message ?? issue.message, at: "key" }];
    default:
      return [{ code: "wrong-value", file, path, why: issue.message }];
  }
}

function unknownKey(file: string, within: Path, key: string, known: string[]): Fault {
  return {
    code: "unknown-key",
    file,
    path: [...within, key],
    at: "key",
    key,
    known,
    suggestion: nearest(key, known),
  };
}

function choice(file: string, path: Path, value: unknown, known: string[]): Fault {
  const suggestion = nearest(String(value), known);
  return { code: "wrong-value/choice", file, path, value: String(value), known, suggestion };
}

/** A value that fits none of several shapes: the words or the keys that would fit. */
function unfit(file: string, path: Path, value: unknown, branches: Issue[][]): Fault {
  const keys: string[] = [];
  const words: string[] = [];
  for (const issue of branches.flat()) {
    if (issue.code === "invalid_value" && !issue.path.length) words.push(...issue.values.map(String));
    if (issue.code === "invalid_type" && !issue.path.length && issue.expected !== "object")
      words.push(issue.expected);
    if (issue.path.length === 1 && typeof issue.path[0] === "string") keys.push(issue.path[0]);
  }
  return typeof value === "object" && value !== null
    ? unknownKey(file, path, Object.keys(value)[0] ?? "", [...new Set(keys)])
    : choice(file, path, value, [...new Set([...words, ...keys])]);
}

/** The keys that a schema knows at a path. */
function keysAt(schema: unknown, path: Path): string[] {
  type Definition = { shape?: object; options?: unknown[]; [inner: string]: unknown };
  const def = (schema as { _zod?: { def: Definition } } | undefined)?._zod?.def;
  if (!def) return [];
  if (def.innerType) return keysAt(def.innerType, path);
  if (def.options) return def.options.flatMap((option) => keysAt(option, path));
  const [step, ...rest] = path;
  if (step === undefined) return Object.keys(def.shape ?? {});
  return keysAt(def.shape?.[step as keyof object] ?? def.valueType ?? def.element, rest);
}
