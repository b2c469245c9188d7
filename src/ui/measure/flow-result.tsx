import { assessFlow, type FlowLimits, type FlowRun } from "../../measurement/index.ts";
import type { Texts } from "../../session/index.ts";
import { showNumber, showSeconds } from "./format.ts";
import { Result } from "./result.tsx";
import { spanAround } from "./scale.tsx";

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
export function FlowResult({ runs, limits, busy, texts, onAgain, onRemoved, onUsed }: Props) {
  const { perSecond, verdict, band, agree } = assessFlow({ kind: "flow", runs }, limits);
  const doubt = band.high - limits.minimum;
  const unclear = verdict === "unclear";
  const value = showNumber(texts, perSecond.value);
  const shown = { value, doubt: showNumber(texts, doubt), limit: showNumber(texts, limits.minimum) };
  const buttons = [
    <button key="use" type="button" class={unclear ? "" : "main"} aria-disabled={busy} onClick={onUsed}>
      {texts("measure.use")}
    </button>,
    <button key="again" type="button" class={unclear ? "main" : "quiet"} onClick={() => onAgain(unclear)}>
      {texts("measure.again")}
    </button>,
  ];
  return (
    <Result
      instrument="flow"
      verdict={verdict}
      said={texts("measure.flow-said", shown)}
      scale={{
        ...spanAround(limits.minimum, perSecond.value, doubt),
        limit: limits.minimum,
        better: "above",
        low: perSecond.value - doubt,
        high: perSecond.value + doubt,
        value: perSecond.value,
        limitText: texts("measure.flow-limit", shown),
        valueText: texts("measure.flow-value", shown),
      }}
      texts={texts}
    >
      {!agree && <p>{texts("measure.flow-uneven")}</p>}
      <ul class="runs">
        {runs.map((run, index) => {
          const said = `${showNumber(texts, run.volume, 2)} ${texts(`measure.unit-${run.unit}`)}, ${showSeconds(texts, run.seconds)}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: two runs may be equal, and nothing else names them.
            <li key={index}>
              {said}
              <button
                type="button"
                class="quiet"
                aria-label={`${texts("measure.remove")}: ${said}`}
                onClick={() => onRemoved(index)}
              >
                {texts("measure.remove")}
              </button>
            </li>
          );
        })}
      </ul>
      {unclear ? buttons.reverse() : buttons}
    </Result>
  );
}
