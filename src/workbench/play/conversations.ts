import { createPlay, type Play, type PlayLine, type PlayOptions, readLine } from "./session.ts";

/** What a conversation may be begun with, as on the command line; what is not named stays as it is there. */
export const beginFields = ["scenario", "locale", "model", "variant", "serial", "now"] as const;

/** The options of one conversation by name; null for one that is not wished. */
export type Wishes = Partial<Record<(typeof beginFields)[number], string | null>>;

/** Conversations one after the other in one process. `hasBegun` is true once a line has begun one. */
export type Conversations = Play & { hasBegun(): boolean };

/**
 * Plays one conversation and, for each line `{"begin":{…}}`, another one in its place, whether or not the one before
 * has come to its ending. A `begin` that cannot be used gets an error and changes nothing.
 * @param open makes the options of a conversation, or says in one sentence why they cannot be used
 */
export function createConversations(
  first: PlayOptions,
  open: (wishes: Wishes) => PlayOptions | string,
): Conversations {
  let play = createPlay(first);
  let hasBegun = false;
  const begin = (wishes: unknown): PlayLine => {
    const options = isWishes(wishes)
      ? open(wishes)
      : `"begin" takes texts named ${beginFields.slice(0, -1).join(", ")} and ${beginFields.at(-1)}.`;
    if (typeof options === "string") return { error: options };
    play = createPlay(options);
    hasBegun = true;
    return play.first;
  };
  return {
    first: play.first,
    hasBegun: () => hasBegun,
    isOver: () => play.isOver(),
    take(line) {
      const given = readLine(line);
      return given && "begin" in given ? begin(given.begin) : play.take(line);
    },
  };
}

function isWishes(value: unknown): value is Wishes {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
  return Object.entries(value).every(
    ([name, wish]) =>
      (beginFields as readonly string[]).includes(name) && (wish === null || typeof wish === "string"),
  );
}
