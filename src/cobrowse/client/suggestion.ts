import type { Fact } from "../../session/index.ts";

/** What an agent may suggest, at most: characters of a line and of a reason, of an id, of a model code; facts at once. */
export const suggestionBounds = { text: 400, id: 120, code: 40, facts: 8 } as const;

/** How a search can be proposed to end: both are for the householder to say. */
export const endings = ["fixed", "professional"] as const;

/**
 * What an agent sends. None of it does anything: it is shown, and what the householder taps then is an act of their own.
 * Ids are of flows/; whoever shows a suggestion looks them up at the turn that is open, and passes over what is not there.
 */
export type Suggestion =
  | { kind: "line"; text: string }
  /** An answer of the turn that is open: it is marked where it stands. */
  | { kind: "point"; turn: string; answer: string }
  | { kind: "propose"; turn: string; answer: string; why: string }
  | { kind: "propose"; check: string; why: string }
  | { kind: "propose"; ending: (typeof endings)[number]; why: string }
  | { kind: "correct"; model: string; why: string }
  /** What the householder said by voice, as the agent heard it. */
  | { kind: "told"; facts: Fact[]; words: string };

/** What became of a suggestion on the householder's device; `past`: its turn was gone, or it can't be taken there. */
export const fates = ["taken", "declined", "past"] as const;

/** `to` is the number of the suggestion in the room's log. */
export type Heard = { to: number; is: (typeof fates)[number] };

/** A suggestion as the kind and the body of a message. */
export function sendable(suggestion: Suggestion): { kind: string; body: string } {
  const { kind, ...rest } = suggestion;
  return { kind, body: "text" in rest ? rest.text : JSON.stringify(rest) };
}

/** Reads what an agent has sent. @returns null where it is nothing that an agent may suggest, or too long */
export function readSuggestion(kind: string, body: string): Suggestion | null {
  if (kind === "line") return { kind, text: body.slice(0, suggestionBounds.text) };
  const given = parsed(body);
  if (!given) return null;
  const text = (name: string) => textIn(given, name, suggestionBounds.text);
  const id = (name: string) => textIn(given, name, suggestionBounds.id) || null;
  const [turn, answer, check, why] = [id("turn"), id("answer"), id("check"), text("why") ?? ""];
  if (kind === "point") return turn && answer ? { kind, turn, answer } : null;
  if (kind === "propose") {
    if (turn && answer) return { kind, turn, answer, why };
    if (check) return { kind, check, why };
    const ending = endings.find((one) => one === given["ending"]);
    return ending ? { kind, ending, why } : null;
  }
  if (kind === "correct") {
    const model = textIn(given, "model", suggestionBounds.code);
    return model ? { kind, model, why } : null;
  }
  if (kind !== "told") return null;
  const facts = factsIn(given["facts"]);
  return facts && { kind, facts, words: text("words") ?? "" };
}

/** Reads what became of a suggestion; null where it says nothing of the kind. */
export function readHeard(body: string): Heard | null {
  const given = parsed(body);
  const is = fates.find((one) => one === given?.["is"]);
  const to = given?.["to"];
  return is && Number.isSafeInteger(to) ? { to: to as number, is } : null;
}

/** What is no object has none of the fields that are asked for. */
function parsed(body: string): Record<string, unknown> | null {
  try {
    return Object(JSON.parse(body));
  } catch {
    return null;
  }
}

/** The names asked for are none that every object has. */
function textIn(given: Record<string, unknown>, name: string, longest: number): string | null {
  const text = given[name];
  return typeof text === "string" && text.length <= longest ? text : null;
}

function factsIn(given: unknown): Fact[] | null {
  if (!Array.isArray(given) || given.length > suggestionBounds.facts) return null;
  const facts = given.flatMap((one: unknown) => {
    const [turn, answer] = ["turn", "answer"].map((name) => textIn(Object(one), name, suggestionBounds.id));
    return turn && answer ? { turn, answer } : [];
  });
  return facts[0] && facts.length === given.length ? facts : null;
}
