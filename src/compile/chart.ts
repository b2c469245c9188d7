import { assign, createMachine } from "xstate";
import { type Adviser, createAdviser } from "../advice/index.ts";
import {
  type ChartContext,
  type ChartEvent,
  createMemory,
  type Note,
  remember,
  vocabulary,
  type Water,
} from "../chart/index.ts";
import type { Flow } from "../guide/index.ts";
import { type Asked, answersTurn, verdictOn } from "../instruments/index.ts";
import { composeChart } from "./compose.ts";

/**
 * The whole flow as one XState machine. Its guards and its one action are pure; it never waits by itself.
 * @param config the composed flow, where a slow phone has composed it in a task of its own
 * @param adviser says which of the checks that are allowed comes next
 */
export function createChart(
  flow: Flow,
  config = composeChart(flow),
  { advise }: Adviser = createAdviser(flow),
) {
  const guards: Record<string, (at: { context: ChartContext; event: ChartEvent }, params: never) => boolean> =
    {};
  for (const [name, test] of Object.entries(vocabulary))
    guards[name] = ({ context, event }, params) => test(context, params, event, advise);
  guards.reads = ({ event: { reading, at } }, { is, ...asked }: ReadsParams) =>
    !!reading && answersTurn(reading, asked) && verdictOn(reading, flow.limits, at) === is;
  return createMachine(
    {
      ...(config as object),
      types: {} as { context: ChartContext; events: ChartEvent; input: Input },
      context: ({ input }: { input: Input }) => createMemory(input.model, input.water),
    } as never,
    {
      guards,
      actions: {
        remember: assign(({ context, event }: never, note: Note) => remember(context, note, event)) as never,
      },
    } as never,
  );
}

/** What a session knows before its first answer. */
type Input = { model: string | null; water?: Water };

type ReadsParams = Asked & { is: string };

export type Chart = ReturnType<typeof createChart>;
