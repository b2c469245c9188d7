import type { Finding, FlowSlice } from "../chart/index.ts";
import type { Texts } from "./actions.ts";
import { readingText } from "./reading-text.ts";

/** The name of a turn in a folded line: its gate's, its own, or its check's. */
export function titleOf(turn: string, texts: Texts): string {
  const [check = "", state = ""] = turn.split(".");
  if (state.startsWith("gate-")) return texts(`gates.${state.slice(5)}.name`);
  if (turn === "part.model") return texts("endings.model.name");
  return texts(`checks.${check}.${state}.name`) || texts(`checks.${check}.name`);
}

/** What a turn found, in words: an answer's own text, or a reading with its uncertainty and verdict. */
export function foundText(turn: string, finding: Finding, flow: FlowSlice, texts: Texts): string {
  if (finding.reading) return readingText(turn, finding, flow, texts);
  if (turn.includes(".gate-") && finding.answer === "ready") return texts("findings.gate-ready");
  return texts(`checks.${turn}.answers.${finding.answer}`) || texts(`findings.${finding.answer}`);
}
