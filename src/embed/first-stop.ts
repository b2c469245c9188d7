import type { FirstTurn, View } from "../turn/index.ts";

/** Whether this answer to the first question stops everything. */
export function stopsAt({ view, stops }: FirstTurn, turn: string, answer: string): boolean {
  return turn === view.turn?.turn && Object.hasOwn(stops.words, answer);
}

/** What is shown where a danger was reported, from what the first file knows; an unknown danger gets the general advice. */
export function stopView({ view, stops }: FirstTurn, danger: string): View {
  const known = Object.hasOwn(stops.words, danger) ? danger : "general";
  const [heading = "", ...body] = stops.words[known] ?? [];
  const turn = view.turn && { ...view.turn, ...stops.turn, heading, body };
  return { ...view, turn, ways: stops.ways };
}
