import { no, of, type Unused } from "./unused.ts";

/** What tells why something does not fit: its place is enough here. */
const why =
  "code input inst origin expected format pattern note values keys options minimum maximum inclusive errors discriminator";

/**
 * What comes from outside is parsed at the door, at once and in one direction. Whoever asks is told whether it fits and
 * if not, where: nobody reads why. Every kind of shape is left, but for texts made of other shapes.
 */
export const zod: Unused = {
  version: "4.6.7",
  members: [
    ...of("ZodMiniType", "with", "parse", "parseAsync", "safeParseAsync", "brand", "register", "apply"),
    '$ZodType."~standard"',
    ...of("normalizeDef", "symbolKeys", "numKeys", "optionalKeys"),
    ...of("NUMBER_FORMAT_RANGES", "int32", "uint32", "float32"),
    ...of("_iss", "code", "input", "inst"),
  ],
  unread: {
    "payload.issues.push": why.split(" "),
    "final.issues.push": ["code", "input", "inst", "expected", "errors"],
  },
  silent: [
    "_iss.params",
    // Only asked for where a text is made of other shapes, or a shape is written down as a schema.
    ...of("inst", "type", "_zod.pattern", "_zod.version"),
    // Only the messages look at these.
    "util.attachSchema",
    "memo?.attach",
  ],
  always: {
    'util.defineLazyInternal(inst, "pattern"…': "void 0",
    'Object.defineProperty(Definition, "name"…': "void 0",
    'Object.defineProperty(_, "name"…': "void 0",
    // Nothing waits.
    "result instanceof Promise": no,
    "checkResult instanceof Promise": no,
    "canary instanceof Promise": no,
    "r instanceof Promise": no,
    "_ instanceof Promise && ctx?.async === false": no,
    "asyncResult || _ instanceof Promise": no,
    "proms.length": "0",
    // In one direction, with every check, to the last problem.
    "_ctx ? { ..._ctx, async: false } : { async: false }": "{}",
    "ctx.skipChecks": no,
    'n > cap && !ctx?.skipChecks && ctx?.direction !== "backward"': "n > cap",
    'ctx.direction === "backward"': no,
    'def.unionFallback || ctx.direction === "backward"': no,
    'opt && (value !== undefined || ctx.direction !== "backward")': "opt",
    "ctx?.abortEarly": no,
    "payload.memo": no,
    // What another script of the page has told its own zod is not for this one.
    "(_a = globalThis).__zod_globalConfig ?? (_a.__zod_globalConfig = {})": "void 0",
    "globalThis.__zod_globalConfig": "{}",
    "globalThis.__zod_globalConfig?.postProcessor": "void 0",
    "core.globalConfig.memoizer": "void 0",
    // A problem is a plain object, not an error to throw.
    "errors.$ZodRealError": "void 0",
    "params?.Parent": "void 0",
    "params?.Parent ?? Object": "Object",
    "util.issue(_iss)": "_iss",
    "received ? { received } : {}": "{}",
    // Keys are texts, and TypeScript sees to it that a shape is made of shapes.
    "Object.getOwnPropertySymbols(def.shape)": "[]",
    "symbolKeys.length": "0",
    '!def.shape?.[k]?._zod?.traits?.has("$ZodType")': no,
    "util.optionalKeys(def.shape)": "0",
  },
  bodies: {
    finalizeIssue: "{ return { path: iss.path ?? [] }; }",
    failure:
      "{ return { success: false, get error() { return { issues: issues.map(util.finalizeIssue) }; } }; }",
    // Words for a refusal are not read, so they are not looked for.
    normalizeParams: "{ return _params ?? {}; }",
    // The library takes care of subclasses and of methods taken off their object, and there are neither.
    members: "{ Object.assign(proto, table); }",
    // The library takes care of shapes that hold themselves.
    defineLazyInternal: `{
      Object.defineProperty(Object.getPrototypeOf(inst._zod), key, {
        configurable: true,
        get() { return (this[key] = compute(this)); },
        set(value) { Object.defineProperty(this, key, { value, writable: true, configurable: true }); },
      });
    }`,
  },
};
