import { assign, createMachine } from "xstate";
import {
  type ChartConfig,
  type ChartContext,
  type ChartEvent,
  joins,
  type Note,
  remember,
  vocabulary,
} from "../chart/index.ts";
import { type Asked, answersTurn, verdictOn } from "../instruments/index.ts";
import type { Limits } from "../measuring/index.ts";

/** What a chart starts with: a memory, and in a scenario's chart the event that led there, with its advice. */
type Input = { memory: ChartContext; event?: ChartEvent };

type At = { context: ChartContext; event: ChartEvent & { input?: Input } };

/** A chart as an XState machine. Its guards and its one action are pure; it never waits by itself and asks nobody. */
export function createChart(config: ChartConfig, limits: Limits) {
  // The first choice of a scenario is made while its machine starts.
  const cause = ({ event }: At): ChartEvent => event.input?.event ?? event;
  const guards: Record<string, (at: At, params: never) => boolean> = {};
  for (const [name, test] of Object.entries(vocabulary))
    guards[name] = (at, params) => test(at.context, params, cause(at));
  guards.reads = ({ event: { reading, at } }, { is, ...asked }: ReadsParams) =>
    !!reading && answersTurn(reading, asked) && verdictOn(reading, limits, at) === is;
  // A verdict takes the limits, so what it is joined with is asked here too.
  for (const type of ["all", "any", "not"])
    guards[type] = (at, params) =>
      joins({ type, params }, (word) => guards[word.type]?.(at, word.params) ?? false);
  return createMachine(
    {
      ...(config as object),
      types: {} as { context: ChartContext; events: ChartEvent; input: Input },
      context: ({ input }: { input: Input }) => input.memory,
    } as never,
    {
      guards,
      actions: {
        remember: assign((at: never, note: Note) => remember((at as At).context, note, cause(at))) as never,
      },
    } as never,
  );
}

type ReadsParams = Asked & { is: string };

export type Chart = ReturnType<typeof createChart>;
