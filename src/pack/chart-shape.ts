import * as z from "zod/mini";
import { everyPreparation, flowBounds, id, listOf, number, prepared, recordOf } from "../guide/index.ts";
import { instrumentNames, temperaturePlaces } from "../instruments/index.ts";

/** Steps to a place of a chart or a flow, such as `flow-test.run` or `too-little/flow-test/run`. */
const step = "[a-z][a-z0-9]*(?:-[a-z0-9]+)*";
const path = (joint: string, most: number) =>
  z
    .string()
    .check(
      z.maxLength(flowBounds.turnRef + flowBounds.id),
      z.regex(new RegExp(`^${step}(?:${joint}${step}){0,${most}}$`)),
    );
export const turnRef = path("\\.", 1);
const stateId = path("/", 3);

const flag = z.optional(z.literal(true));
const ids = listOf(id);
const preparation = z.enum(everyPreparation);
const nullableId = z.optional(z.nullable(id));

const test = <Params extends z.core.$ZodLooseShape>(type: string, params: Params) =>
  z.strictObject({ type: z.literal(type), params: z.strictObject(params) });

/** The closed vocabulary of guards; nothing else is a guard. */
export const guardShape: z.ZodMiniType = z.lazy(() => guards);
const of = listOf(guardShape);
const guards = z.discriminatedUnion("type", [
  test("answered", { turn: turnRef, is: ids }),
  test("verdict", { turn: turnRef, is: ids }),
  test("done", { check: id }),
  test("found", { causes: ids }),
  test("remedied", { causes: ids }),
  test("any-remedied", {}),
  test("unwaited", {}),
  test("returning", { turn: turnRef }),
  test("modelled", {}),
  test("elapsed", { turn: turnRef, minutes: number }),
  test("may-look-again", { check: id }),
  test("prepared", { of: preparation, is: ids }),
  test("fresh", { gate: id, minutes: number, leaves: prepared }),
  test("any-confirmed", {}),
  test("refused", { gates: ids }),
  test("led", { to: z.optional(id) }),
  test("advised", { check: id }),
  test("part-advised", { cause: id }),
  test("last-read", { place: z.enum(temperaturePlaces), is: ids }),
  test("fitted", { causes: ids }),
  test("untried", {}),
  test("later-advised", {}),
  test("reads", { instrument: id, place: z.optional(id), is: id }),
  test("all", { of }),
  test("any", { of }),
  test("not", { of: guardShape }),
]);

const note = z.strictObject({
  turn: z.optional(turnRef),
  answer: z.optional(id),
  finds: z.optional(id),
  remedies: z.optional(id),
  forgets: z.optional(ids),
  causeStation: z.optional(id),
  clears: z.optional(ids),
  suspects: z.optional(ids),
  done: z.optional(id),
  again: z.optional(z.strictObject({ check: id, found: ids })),
  waitStarts: z.optional(turnRef),
  waited: flag,
  inVain: flag,
  fitted: flag,
  returnTo: z.optional(z.nullable(turnRef)),
  cause: nullableId,
  creditsLastFix: flag,
  who: z.optional(id),
  calls: z.optional(z.enum(["somebody", "by-belief"])),
  danger: z.optional(id),
  leaves: z.optional(prepared),
  confirms: z.optional(id),
  refuses: z.optional(id),
  returns: flag,
});

const transition = z.strictObject({
  target: z.string().check(z.maxLength(300), z.regex(/^#[a-z]/)),
  guard: z.optional(guardShape),
  actions: z.optional(listOf(z.strictObject({ type: z.literal("remember"), params: note }), 3)),
});

const meta = z.strictObject({
  turn: turnRef,
  kind: z.enum(["choice", "gate", "reading", "model", "wait", "ending"]),
  check: z.nullable(id),
  station: z.optional(id),
  hazards: z.optional(ids),
  minutes: z.optional(number),
  tools: z.optional(ids),
  gated: flag,
  chosen: flag,
  picture: z.optional(z.union([id, z.literal("")])),
  answers: z.optional(ids),
  gate: z.optional(id),
  instrument: z.optional(z.enum(instrumentNames)),
  place: z.optional(z.enum(temperaturePlaces)),
  against: z.optional(listOf(turnRef)),
  lasts: z.optional(number),
  inside: z.optional(listOf(z.strictObject({ stage: id, after: number }))),
  short: flag,
  needs: z.optional(prepared),
  tells: z.optional(listOf(preparation)),
  outcome: z.optional(z.enum(["fixed", "later", "part", "professional", "stopped"])),
});

/** Every event that a chart may take: no pattern that takes more than one. */
const event = z
  .string()
  .check(
    z.maxLength(flowBounds.turnRef),
    z.regex(
      new RegExp(
        `^(?:(?:answered|danger-reported)\\.${step}|measured|model-given|wait-ended|session-resumed|help-asked|ice-returned|trouble-returned)$`,
      ),
    ),
  );

const stateOf = (states: z.ZodMiniType) =>
  z.strictObject({
    id: stateId,
    initial: z.optional(id),
    states: z.optional(recordOf(id, states)),
    always: z.optional(listOf(transition)),
    on: z.optional(recordOf(event, z.union([transition, listOf(transition)]))),
    meta: z.optional(meta),
  });

const leaf = z.omit(stateOf(z.never()), { states: true, initial: true });

/** A chart as XState takes it, and nothing else that XState would take: three levels of states and their transitions. */
export const chartShape = z.strictObject({
  id: z.literal("fridgeside"),
  initial: id,
  states: recordOf(id, stateOf(stateOf(leaf))),
});
