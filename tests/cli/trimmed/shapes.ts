type Zod = typeof import("zod/mini");

/** Shapes of every kind that the script has or may come to have, by what is special about them. */
export const shapesOf = (z: Zod) => {
  const a = z.object({ a: z.string() });
  const both = z.object({ a: z.string(), b: z.number() });
  return {
    tuple: z.tuple([z.string(), z.number()]),
    rest: z.tuple([z.string()], z.number()),
    record: z.record(z.string(), z.number()),
    "record of few": z.record(z.enum(["a", "b"]), z.number()),
    "record of some": z.partialRecord(z.enum(["a", "b"]), z.number()),
    caught: z.object({ a: z.catch(z.array(z.string()), []), b: z.catch(z.number(), 3) }),
    "by default": z.object({ a: z._default(z.string(), "x"), b: z.optional(z._default(z.number(), 2)) }),
    "from a default": z.object({ a: z.prefault(z.string(), "q") }),
    strict: z.strictObject({ a: z.string() }),
    loose: z.looseObject({ a: z.string() }),
    "with others": z.catchall(a, z.number()),
    "told apart twice": z.discriminatedUnion("k", [
      z.discriminatedUnion("j", [
        z.object({ k: z.literal("x"), j: z.literal(1) }),
        z.object({ k: z.literal("x"), j: z.literal(2), q: z.optional(z.string()) }),
      ]),
      z.object({ k: z.enum(["y", "z"]) }),
    ]),
    "told apart by nothing": z.discriminatedUnion("k", [
      z.object({ k: z.optional(z.literal("x")), a: z.number() }),
      z.object({ k: z.literal("y") }),
    ]),
    anything: z.object({ a: z.any(), b: z.unknown() }),
    nothing: z.object({ a: z.optional(z.never()), b: z.undefined() }),
    truth: z.union([z.boolean(), z.null()]),
    literals: z.literal([1, "a", null, true]),
    "long enough": z
      .array(z.string().check(z.minLength(1), z.maxLength(3)))
      .check(z.minLength(1), z.maxLength(3)),
    "as long as": z.string().check(z.length(3)),
    "great enough": z.number().check(z.minimum(1), z.maximum(9), z.multipleOf(0.5)),
    "greater than": z.number().check(z.positive(), z.lt(3)),
    whole: z.int().check(z.minimum(0), z.maximum(16)),
    "not missing": z.object({ a: z.nonoptional(z.optional(z.string())) }),
    "missing or a text": z.object({ a: z.exactOptional(z.string()) }),
    "missing, nothing or a text": z.object({ a: z.nullish(z.string()) }),
    "two at once": z.intersection(a, z.object({ b: z.number() })),
    "one of two": z.xor([z.object({ a: z.string() }), z.object({ b: z.number() })]),
    transformed: z.object({ a: z.pipe(z.string(), z.transform(Number)) }),
    coerced: z.coerce.number(),
    compared: z.object({ a: z.number(), b: z.number() }).check(z.refine((both) => both.a < both.b)),
    "refused elsewhere": z.object({ a: z.number() }).check(z.refine(({ a }) => a > 1, { path: ["a"] })),
    "refused at once": z.string().check(
      z.minLength(2, { abort: true }),
      z.refine((text) => text[1] !== "n", "words of its own"),
    ),
    tidied: z.string().check(z.trim(), z.toLowerCase(), z.minLength(1), z.startsWith("o")),
    formats: z.union([z.email(), z.url(), z.uuid(), z.iso.date(), z.iso.datetime()]),
    later: z.lazy(() => z.object({ a: z.optional(z.string()) })),
    "in itself": z.object({
      v: z.number(),
      get next() {
        return z.optional(a);
      },
    }),
    more: z.extend(a, { b: z.number() }),
    less: z.pick(both, { a: true }),
    some: z.partial(both),
  };
};

/** What some of them take. */
export const fitting: unknown[] = [
  ...[
    "one",
    "",
    "two3",
    "a12",
    " O ",
    "2026-11-25",
    "2026-11-25T10:00:00Z",
    "https://a.example/",
    "a@b.example",
  ],
  ...[1, 2, 7.5, 3, true, null, ["one"], ["one", 2], ["a", "b", "c", "d"]],
  ...[{}, { a: "one" }, { a: "one", b: 2 }, { a: 1, b: 2 }, { a: 2, b: 1 }, { a: ["x"], b: 1 }, { a: null }],
  ...[{ k: "x", j: 1 }, { k: "x", j: 2, q: "w" }, { k: "y" }, { a: 1 }, { v: 1, next: { a: "one" } }],
];
