import type { StateConfig, Transition } from "../../chart/index.ts";

/** One line of a turn: what is answered, and where that leads. */
export type Exit = {
  events: string[];
  text: string;
  /** The state that is waited in next, without the states that wait for nobody. */
  to: string;
};

/** A turn or gate of a check, ready to be placed. */
export type TurnBox = { id: string; title: string; isGate: boolean; exits: Exit[] };

/** Ways that every turn has; they are told once for the whole drawing. */
const anywhere = ["session-resumed"];

/**
 * The turns of one composed check in all its parts, gates first, with their exits.
 * @param whole every check of the scenario, since an answer may lead to another one
 */
export function turnBoxes(parts: StateConfig[], whole: StateConfig[]): TurnBox[] {
  const own = parts.flatMap((part) => [part, ...Object.values(part.states ?? {})]);
  const states = [...own, ...whole.filter((check) => check.states)];
  return own
    .filter(({ meta }) => meta)
    .map((state) => ({
      id: state.id,
      title: titleOf(state),
      isGate: state.meta?.kind === "gate",
      exits: merged(Object.entries(state.on ?? {}).flatMap(([event, ways]) => exitsOf(event, ways, states))),
    }));
}

function titleOf({ id, meta }: StateConfig): string {
  const name = id.slice(id.lastIndexOf("/") + 1);
  const minutes = meta?.lasts ?? 0;
  if (minutes) return `${name} (${minutes < 60 ? `${minutes} min` : `${minutes / 60} h`})`;
  return meta?.instrument ? `${name} (${meta.instrument})` : name;
}

function exitsOf(event: string, ways: Transition | Transition[], states: StateConfig[]): Exit[] {
  if (anywhere.includes(event)) return [];
  return [ways].flat().map((way) => {
    const note = way.actions?.[0]?.params;
    const answer = note?.answer ?? event;
    const told = note?.remedies
      ? `, puts right ${note.remedies}`
      : note?.finds
        ? `, finds ${note.finds}`
        : "";
    return {
      events: [event === "measured" ? `measured.${answer}` : event],
      text: `${answer}${told}`,
      to: waitedIn(way.target, states),
    };
  });
}

/** Behind the gates of a check stands a state that waits for nobody; its last way is the one that is taken first. */
function waitedIn(target: string, states: StateConfig[]): string {
  const id = target.replace(/^#/, "");
  const part = states.find((state) => state.id === id && state.states);
  if (part) return `${id}/${part.initial}`;
  const passed = states.find((state) => state.id === id && !state.meta);
  return passed?.always ? waitedIn(passed.always.at(-1)?.target ?? id, states) : id;
}

/** Where both standing answers lead to the same place and tell nothing, they share a line. */
function merged(exits: Exit[]): Exit[] {
  const isPlain = ({ events, text }: Exit) =>
    /^answered\.(not-sure|cannot)$/.test(events[0] ?? "") && !text.includes(",");
  const [first, second, ...more] = exits.filter(isPlain);
  if (!first || !second || more.length || first.to !== second.to) return exits;
  const shared = {
    ...first,
    events: [...first.events, ...second.events],
    text: `${first.text} or ${second.text}`,
  };
  return [...exits.filter((exit) => exit !== first && exit !== second), shared];
}
