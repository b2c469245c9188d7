import type { ChartConfig, StateConfig, Transition } from "./config.ts";
import type { Note } from "./memory.ts";

/**
 * A chart as it travels to a phone: without what its own places and names say already. A state's id is the way to it,
 * an answer is the name of its event, and whatever notes an answer notes it of the state's own turn.
 */
export type ShortChart = Omit<ChartConfig, "states"> & { states: Record<string, ShortState> };

type ShortState = Omit<StateConfig, "id" | "states"> & { states?: Record<string, ShortState> };

/** A short chart spelled out, as xstate takes it. */
export function restoreChart({ states, ...chart }: ShortChart): ChartConfig {
  return { ...chart, states: mapValues(states, (state, key) => restoreState(state, key)) };
}

/** @throws Error where a chart says more in these places than they say by themselves: it could not be restored */
export function shortenChart(chart: ChartConfig): ShortChart {
  const short = { ...chart, states: mapValues(chart.states, shortenState) };
  if (JSON.stringify(restoreChart(short)) !== JSON.stringify(chart))
    throw new Error(`The chart "${chart.id}" has an id, a turn or an answer out of its place`);
  return short;
}

function restoreState(short: ShortState, id: string): StateConfig {
  const { states, on, meta } = short;
  return {
    id,
    ...short,
    ...(states && { states: mapValues(states, (inner, key) => restoreState(inner, `${id}/${key}`)) }),
    ...(on && {
      on: mapNotes(on, (note, event) => {
        const answer = note.answer ?? answerOf(event);
        return answer !== undefined && meta ? { turn: meta.turn, answer, ...note } : note;
      }),
    }),
  } as StateConfig;
}

function shortenState({ id: _, ...state }: StateConfig): ShortState {
  const { states, on, meta } = state;
  return {
    ...state,
    ...(states && { states: mapValues(states, shortenState) }),
    ...(on && {
      on: mapNotes(on, ({ turn, answer, ...note }, event) => ({
        ...(turn !== undefined && turn !== meta?.turn && { turn }),
        ...(answer !== undefined && answer !== answerOf(event) && { answer }),
        ...note,
      })),
    }),
  } as ShortState;
}

const answerOf = (event: string): string | undefined => /^answered\.(.+)/.exec(event)?.[1];

type Transitions = NonNullable<StateConfig["on"]>;

/** The same transitions with other notes. */
function mapNotes(on: Transitions, to: (note: Note, event: string) => Note): Transitions {
  return mapValues(on, (ways, event) => {
    const map = (way: Transition): Transition => {
      const actions = way.actions?.map(({ type, params }) => ({ type, params: to(params, event) }));
      return actions ? { ...way, actions } : way;
    };
    return Array.isArray(ways) ? ways.map(map) : map(ways);
  });
}

function mapValues<From, To>(
  all: Record<string, From>,
  to: (one: From, key: string) => To,
): Record<string, To> {
  return Object.fromEntries(Object.entries(all).map(([key, one]) => [key, to(one, key)]));
}
