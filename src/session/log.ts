import * as z from "zod/mini";

const at = z.string().check(
  z.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/),
  // A 99th hour has the right shape, and a wait that begins then could not be counted.
  z.refine((text) => !Number.isNaN(Date.parse(text))),
);
const turn = z.string();
const fitted = z.union([
  z.object({ by: z.literal("date"), date: z.string() }),
  z.object({ by: z.enum(["month", "since-moving"]), month: z.string() }),
  z.object({
    by: z.literal("season"),
    season: z.enum(["spring", "summer", "autumn", "winter"]),
    year: z.number(),
    hemisphere: z.optional(z.enum(["north", "south"])),
  }),
]);

const estimate = z.object({ value: z.number(), u: z.number() });
const mass = z.enum(["g", "kg", "oz", "lb"]);

const run = z.object({
  volume: z.number(),
  unit: z.enum(["ml", "us-fl-oz", "us-cup", "g"]),
  seconds: z.number(),
});

const supply = z.discriminatedUnion("by", [
  z.object({
    kind: z.literal("supply"),
    by: z.literal("fill"),
    volume: z.number(),
    unit: z.enum(["ml", "l", "us-fl-oz", "us-cup", "us-qt", "us-gal", "uk-pint", "g"]),
    seconds: z.number(),
  }),
  z.object({
    kind: z.literal("supply"),
    by: z.literal("gauge"),
    value: z.number(),
    unit: z.enum(["psi", "bar", "kPa"]),
  }),
]);

const reading = z.union([
  supply,
  z.object({ kind: z.literal("flow"), runs: z.array(run), before: z.optional(z.array(run)) }),
  z.object({
    kind: z.literal("temperature"),
    value: z.number(),
    unit: z.enum(["C", "F"]),
    with: z.enum(["display", "thermometer"]),
    place: z.optional(z.enum(["freezer", "fridge"])),
    stood: z.optional(z.number()),
  }),
  z.object({
    kind: z.literal("filter-age"),
    fitted,
    use: z.optional(
      z.object({
        people: z.number(),
        habit: z.enum(["ice", "glasses", "all"]),
        capacity: z.optional(z.number()),
      }),
    ),
  }),
  z.object({
    kind: z.literal("ice"),
    by: z.enum(["pieces", "weight", "batches"]),
    amount: z.number(),
    unit: z.optional(mass),
    hours: z.number(),
    pieceGrams: z.optional(z.number()),
    wanted: z.nullable(z.enum(["little", "some", "much"])),
    celsius: z.optional(estimate),
    perSecond: z.optional(estimate),
  }),
  z.object({ kind: z.literal("cubes"), pieces: z.number(), mass: z.number(), unit: mass }),
  z.object({
    kind: z.literal("seal"),
    door: z.enum(["one", "two", "drawer"]),
    spots: z.array(z.nullable(z.enum(["grips", "drags", "slips"]))),
  }),
]);

const event = z.discriminatedUnion("type", [
  z.object({
    type: z.literal("answered"),
    turn,
    answer: z.string(),
    items: z.optional(z.array(z.string())),
    at,
  }),
  z.object({ type: z.literal("measured"), turn, reading, at }),
  z.object({ type: z.literal("model-given"), turn, code: z.nullable(z.string()), typed: z.string(), at }),
  z.object({ type: z.literal("danger-reported"), danger: z.string(), at }),
  z.object({ type: z.enum(["help-asked", "ice-returned", "session-resumed", "wait-ended"]), at }),
]);

const log = z.object({
  format: z.literal(1),
  flow: z.string(),
  model: z.nullable(z.string()),
  started: at,
  events: z.array(event),
});

/** One thing that happened, with the instant and the person's own UTC offset (RFC 3339). */
export type LogEvent = z.infer<typeof event>;

/** The events of one session: the only thing that is stored or shared. `flow` is the version of flows/ it ran on. */
export type Log = z.infer<typeof log>;

/** An empty log. `model` is a model code that the shop's page already knows. */
export function createLog(flow: string, started: string, model: string | null = null): Log {
  return { format: 1, flow, model, started, events: [] };
}

/** A log from storage, a link or a file; null for anything that is none. Never throws. */
export function parseLog(value: unknown): Log | null {
  const parsed = log.safeParse(value);
  return parsed.success ? parsed.data : null;
}

/** One event as a line of `npm run play` or a host page might send it; null for anything else. */
export function parseEvent(value: unknown): LogEvent | null {
  const parsed = event.safeParse(value);
  return parsed.success ? parsed.data : null;
}
