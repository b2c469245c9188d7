import { type TurnMeta, waterWord } from "../chart/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";

/**
 * What an ending says of a tap that we had closed: open it again, or leave it closed for a leak. Also said at a turn
 * that needs the water, which only a log from before that was asked can meet with the tap closed.
 */
export function waterLines(session: Session, { needs, outcome, tells }: TurnMeta, texts: Texts): string[] {
  if (!needs && !tells) return [];
  const word = waterWord(session.flow, memoryOf(session), outcome ?? null);
  const lines = word ? texts(`endings.water.${word}`).split("\n") : [];
  return lines.map((line) => line.trim()).filter(Boolean);
}
