import { type Finding, type Flow, flowLimits, limitOf, temperatureLimits } from "../flow/index.ts";
import { assessFilterAge, assessFlow, assessTemperature, fromCelsius } from "../measurement/index.ts";
import type { Texts } from "./actions.ts";
import { createNumbers } from "./texts.ts";

/** The name of a turn in a folded line: its gate's, its own, or its check's. */
export function titleOf(turn: string, texts: Texts): string {
  const [check = "", state = ""] = turn.split(".");
  if (state.startsWith("gate-")) return texts(`gates.${state.slice(5)}.name`);
  if (turn === "part.model") return texts("endings.model.name");
  return texts(`checks.${check}.${state}.name`) || texts(`checks.${check}.name`);
}

/** What a turn found, in words: an answer's own text, or a reading with its uncertainty and verdict. */
export function foundText(turn: string, finding: Finding, flow: Flow, texts: Texts): string {
  if (finding.reading) return readingText(turn, finding, flow, texts);
  if (turn.includes(".gate-") && finding.answer === "ready") return texts("findings.gate-ready");
  return texts(`checks.${turn}.answers.${finding.answer}`) || texts(`findings.${finding.answer}`);
}

function readingText(turn: string, { reading, answer, at }: Finding, flow: Flow, texts: Texts): string {
  const number = createNumbers(texts("ui.locale"));
  const verdict = texts(`checks.${turn}.verdicts.${answer}`) || texts(`findings.verdicts.${answer}`);
  const guard = limitOf(flow.limits, "guard-factor");
  if (reading?.kind === "flow") {
    const { value, u } = assessFlow(reading, flowLimits(flow.limits)).perSecond;
    return texts("findings.flow", { value: number(value, 1), error: number(guard * u, 1), verdict });
  }
  if (reading?.kind === "temperature") {
    const { u } = assessTemperature(reading, temperatureLimits(flow.limits)).celsius;
    const value = `${number(reading.value, 1)} °${reading.unit}`;
    const error = number(fromCelsius(guard * u, reading.unit) - fromCelsius(0, reading.unit), 1);
    return texts("findings.temperature", { value, error, verdict });
  }
  if (reading?.kind !== "filter-age") return "";
  const { months } = assessFilterAge(reading, at.slice(0, 10), limitOf(flow.limits, "filter-months"));
  const low = number(Math.floor(months.low), 0);
  if (months.high === null) return texts("findings.filter-age-open", { low, verdict });
  const high = number(Math.ceil(months.high), 0);
  return texts(low === high ? "findings.filter-age-one" : "findings.filter-age", { low, high, verdict });
}
