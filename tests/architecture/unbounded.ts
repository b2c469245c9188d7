import * as z from "zod/mini";

type Json = { [key: string]: unknown };

/**
 * The places of a schema that take a text, a list, a set of keys or a number of any size, or anything at all, as the
 * JSON Schema that is made of it has them.
 */
export function findUnbounded(schema: z.ZodMiniType): string[] {
  const json = z.toJSONSchema(schema, { io: "input", unrepresentable: "throw" }) as Json;
  return findIn(json, "");
}

function findIn(json: Json, path: string): string[] {
  const lacks = (...words: string[]) => !words.some((word) => typeof json[word] === "number");
  const own: string[] = [];
  const isListed = "enum" in json || "const" in json;
  const isJoined = "anyOf" in json || "oneOf" in json || "allOf" in json || "$ref" in json;
  if (json.type === undefined && !isListed && !isJoined) own.push(`${path} (anything)`);
  if (json.type === "string" && !isListed && lacks("maxLength")) own.push(`${path} (text)`);
  if (json.type === "array" && lacks("maxItems")) own.push(`${path} (list)`);
  if (
    (json.type === "number" || json.type === "integer") &&
    !isListed &&
    (lacks("minimum", "exclusiveMinimum") || lacks("maximum", "exclusiveMaximum"))
  )
    own.push(`${path} (number)`);
  const { propertyNames, additionalProperties } = json as { [key: string]: Json | undefined };
  const isRecord = propertyNames !== undefined && !("enum" in propertyNames);
  if (isRecord && lacks("maxProperties")) own.push(`${path} (keys)`);
  const inner: [string, unknown][] = [
    ...["properties", "$defs"].flatMap((word) => Object.entries((json[word] as Json | undefined) ?? {})),
    ...["anyOf", "oneOf", "allOf"].flatMap((word) =>
      ((json[word] as unknown[] | undefined) ?? []).map((each) => ["", each] as [string, unknown]),
    ),
    ["[]", json.items],
    ["{key}", propertyNames],
    ["{}", additionalProperties],
  ];
  return [
    ...own,
    ...inner.flatMap(([step, each]) =>
      typeof each === "object" && each !== null ? findIn(each as Json, step ? `${path}/${step}` : path) : [],
    ),
  ];
}
