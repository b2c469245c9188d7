import {
  assessFilterShare,
  assessFlow,
  type FlowRun,
  pointOf,
  type Verdict,
} from "../../../measurement/index.ts";
import type { ReadingNeed, Texts } from "../../../turn/index.ts";
import { Bar } from "./bar.tsx";
import { showNumber, showSeconds } from "./format.ts";
import { Result } from "./result.tsx";

type Need = Extract<ReadingNeed, { instrument: "flow" }>;
type Props = {
  runs: FlowRun[];
  need: Need;
  busy: boolean;
  texts: Texts;
  onAgain(longer: boolean): void;
  onRemoved(index: number): void;
  onUsed(): void;
};

/** What the runs come to together. Too close to call makes 'measure again' the first choice, and a longer one. */
export function FlowResult({ runs, need, onAgain, onRemoved, ...rest }: Props) {
  const { texts } = rest;
  const { limits } = need;
  const { perSecond, verdict, range, agree, odd, falling } = assessFlow({ kind: "flow", runs }, limits);
  const { value } = perSecond;
  const limit = limits.minimum;
  const doubt = range.high - value;
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
      {...range}
      limitText={texts("measure.flow-limit", shown)}
      valueText={texts("measure.flow-value", shown)}
      instead={
        <button type="button" class={unclear ? "main" : "quiet"} onClick={() => onAgain(unclear)}>
          {texts("measure.again")}
        </button>
      }
    >
      {!agree && <p>{texts(`measure.flow-${unevenness(odd, falling)}`, { run: (odd ?? 0) + 1 })}</p>}
      {need.before && (
        <FilterShare runs={runs} before={need.before} need={need} verdict={verdict} texts={texts} />
      )}
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

/** Which of the ways in which runs may disagree is worth telling. */
function unevenness(odd: number | null, falling: boolean): "odd" | "falling" | "uneven" {
  return falling ? "falling" : odd === null ? "uneven" : "odd";
}

type ShareProps = { runs: FlowRun[]; before: readonly FlowRun[]; need: Need; verdict: Verdict; texts: Texts };

/** The share of the pressure that the filter takes, and what that points to. */
function FilterShare({ runs, before, need, verdict, texts }: ShareProps) {
  const share = assessFilterShare({ kind: "flow", runs: before }, { kind: "flow", runs }, need.limits);
  const points = pointOf({ share, without: verdict, supply: need.supply }, need.muchShare);
  const percent = (part: number) => showNumber(texts, part * 100, 0);
  return (
    <>
      {share && (
        <>
          <p>
            {texts("measure.share-said", { low: percent(share.range.low), high: percent(share.range.high) })}
          </p>
          <Bar {...share.range} start={texts("measure.share-none")} end={texts("measure.share-all")} />
        </>
      )}
      <p>{texts(`measure.points-${points}`)}</p>
    </>
  );
}
