import { assessFlow, type FlowLimits, type FlowRun } from "../../measurement/index.ts";
import type { Texts } from "../../session/index.ts";
import { showNumber, showSeconds } from "./format.ts";
import { Result } from "./result.tsx";

type Props = {
  runs: FlowRun[];
  limits: FlowLimits;
  busy: boolean;
  texts: Texts;
  onAgain(longer: boolean): void;
  onRemoved(index: number): void;
  onUsed(): void;
};

/** What the runs come to together. Too close to call makes 'measure again' the first choice, and a longer one. */
export function FlowResult({ runs, limits, onAgain, onRemoved, ...rest }: Props) {
  const { texts } = rest;
  const { perSecond, verdict, band, agree } = assessFlow({ kind: "flow", runs }, limits);
  const { value } = perSecond;
  const limit = limits.minimum;
  const doubt = band.high - limit;
  const unclear = verdict === "unclear";
  const shown = {
    value: showNumber(texts, value),
    doubt: showNumber(texts, doubt),
    limit: showNumber(texts, limit),
  };
  return (
    <Result
      {...rest}
      instrument="flow"
      verdict={verdict}
      said={texts("measure.flow-said", shown)}
      limit={limit}
      better="above"
      low={value - doubt}
      high={value + doubt}
      limitText={texts("measure.flow-limit", shown)}
      valueText={texts("measure.flow-value", shown)}
      instead={
        <button type="button" class={unclear ? "main" : "quiet"} onClick={() => onAgain(unclear)}>
          {texts("measure.again")}
        </button>
      }
    >
      {!agree && <p>{texts("measure.flow-uneven")}</p>}
      <ul class="runs">
        {runs.map((run, index) => {
          const said = `${showNumber(texts, run.volume, 2)} ${texts(`measure.unit-${run.unit}`)}, ${showSeconds(texts, run.seconds)}`;
          const remove = texts("measure.remove");
          return (
            <li key={index}>
              {said}
              <button
                type="button"
                class="quiet"
                aria-label={`${remove}: ${said}`}
                onClick={() => onRemoved(index)}
              >
                {remove}
              </button>
            </li>
          );
        })}
      </ul>
    </Result>
  );
}
