import type * as z from "zod/mini";
import type { Path } from "../../guide/index.ts";
import { type FileKind, fileSchemas } from "../../guide/index.ts";
import { nearest, offer } from "./nearest.ts";

export type Issue = z.core.$ZodIssue;

type Told = { code: string; message: string; suggestion?: string; at?: Path; part?: "key" };
type Seen = { value: unknown; missing: boolean; kind: FileKind };

/** Says what is wrong with a value in the words of the person who typed it; several where several keys are. */
export function describeIssue(issue: Issue, { value, missing, kind }: Seen): Told[] {
  const name = issue.path.length ? `"${String(issue.path.at(-1))}"` : "The file";
  if (kind === "limits" && issue.path.at(-1) === "source" && (missing || typeof value === "string"))
    return [unsourced(String(issue.path[0]))];
  if (missing) return [{ code: "missing-key", message: `${name} is missing here.` }];
  switch (issue.code) {
    case "unrecognized_keys":
      return issue.keys.map((key) =>
        unknownKey(key, keysAt(fileSchemas[kind], issue.path), issue.path as Path),
      );
    case "invalid_key":
      return [{ code: "wrong-value", message: `${name} is not an id: ${idRule}.`, part: "key" }];
    case "invalid_format":
      return [{ code: "wrong-value", message: `"${value}" ${formatRule(String(issue.pattern))}.` }];
    case "invalid_value":
      return [oneOf(value, issue.values.map(String))];
    case "invalid_type":
      return [
        { code: "wrong-value", message: `${name} must be ${kinds[issue.expected] ?? issue.expected}.` },
      ];
    case "too_small":
      return [{ code: "wrong-value", message: `${name} must have at least ${issue.minimum}.` }];
    case "too_big":
      return [{ code: "wrong-value", message: `${name} must have at most ${issue.maximum}.` }];
    case "invalid_union":
      return [unfit(issue.errors, value, issue.path as Path)];
    default:
      return [{ code: "wrong-value", message: `${name} does not fit: ${issue.message}.` }];
  }
}

const idRule = "small letters, digits and single hyphens, a letter first";
const formatRule = (pattern: string) =>
  pattern.includes("\\.")
    ? 'must name a check and its turn, as in "flow-test.run"'
    : `is not an id: ${idRule}`;
const kinds: Record<string, string> = {
  object: "a set of keys",
  record: "a set of keys",
  array: "a list",
  string: "a word or text",
  number: "a number",
  boolean: "true or false",
};

function unsourced(limit: string): Told {
  return {
    code: "limit-without-source",
    message: `Limit "${limit}" has no source. Name where the number comes from, or write "common practice, no source".`,
  };
}

function unknownKey(key: string, known: string[], within: Path): Told {
  const { words, field } = offer(nearest(key, known));
  const list = words || !known.length ? "" : ` Known here: ${known.join(", ")}.`;
  return {
    code: "unknown-key",
    message: `"${key}" is not known here.${words}${list}`,
    at: [...within, key],
    part: "key",
    ...field,
  };
}

function oneOf(value: unknown, values: string[]): Told {
  const { words, field } = offer(nearest(String(value), values));
  return {
    code: "wrong-value",
    message: `"${value}" must be one of: ${values.join(", ")}.${words}`,
    ...field,
  };
}

/** A value that fits none of several shapes: the words or the keys that would fit. */
function unfit(branches: Issue[][], value: unknown, path: Path): Told {
  const keys = new Set<string>();
  const words: string[] = [];
  for (const issue of branches.flat()) {
    if (issue.code === "invalid_value" && !issue.path.length) words.push(...issue.values.map(String));
    if (issue.code === "invalid_type" && !issue.path.length)
      words.push(kinds[issue.expected] ?? issue.expected);
    if (issue.path.length === 1 && typeof issue.path[0] === "string") keys.add(issue.path[0]);
  }
  if (typeof value === "object" && value !== null)
    return unknownKey(Object.keys(value)[0] ?? "", [...keys], path);
  return oneOf(value, [...new Set([...words, ...keys])]);
}

/** The keys that a schema knows at a path. */
function keysAt(schema: unknown, path: readonly PropertyKey[]): string[] {
  type Definition = { shape?: object; options?: unknown[]; [inner: string]: unknown };
  const def = (schema as { _zod?: { def: Definition } } | undefined)?._zod?.def;
  if (!def) return [];
  if (typeof def.getter === "function") return keysAt(def.getter(), path);
  if (def.innerType) return keysAt(def.innerType, path);
  if (def.options) return def.options.flatMap((option) => keysAt(option, path));
  const [step, ...rest] = path;
  if (step === undefined) return Object.keys(def.shape ?? {});
  return keysAt(def.shape?.[step as keyof object] ?? def.valueType ?? def.element, rest);
}
