import type { ScreenProps } from "../../panel/frame/index.ts";
import { Bar, Result, showNumber, showSeconds } from "../../panel/screens/reading/index.ts";
import type { Texts } from "../../turn/index.ts";
import type { NeedOf } from "../index.ts";
import { rangeText } from "../range.ts";
import { assessFlow } from "./assess.ts";
import { assessFilterShare, pointOf } from "./filter-share.ts";
import type { FlowReading } from "./reading.ts";
import { inUnitOf } from "./unit.ts";

type Props = Omit<ScreenProps, "services" | "picture"> & {
  reading: FlowReading;
  need: NeedOf<"flow">;
  /** They were taken before a reload. */
  still: boolean;
  onAgain(longer: boolean): void;
  onRemoved(index: number): void;
};

/** What the runs come to together. Too close to call makes 'measure again' the first choice, and a longer one. */
export function FlowResult({ need, onAgain, onRemoved, ...props }: Props) {
  const { reading, texts } = props;
  const { limits } = need;
  const { perSecond, verdict, range, agree, odd, falling } = assessFlow(reading, limits);
  const unclear = verdict === "unclear";
  const inUnit = inUnitOf(reading, limits);
  const show = (flow: number) => showNumber(texts, inUnit.shown(flow), inUnit.decimals);
  const shown = {
    value: show(perSecond.value),
    doubt: show(range.high - perSecond.value),
    limit: show(limits.minimum),
    unit: texts(`measure.unit-${inUnit.unit}`),
    seconds: showNumber(texts, limits.aimSeconds),
  };
  return (
    <Result
      {...props}
      {...range}
      name="flow"
      verdict={verdict}
      shown={shown}
      limit={limits.minimum}
      better="above"
      instead={
        <button type="button" class={unclear ? "main" : "quiet"} onClick={() => onAgain(unclear)}>
          {texts("measure.again")}
        </button>
      }
    >
      {!agree && <p>{texts(`measure.flow-${unevenness(odd, falling)}`, { run: (odd ?? 0) + 1 })}</p>}
      <FilterShare reading={reading} need={need} texts={texts} />
      <ul class="runs">
        {reading.runs.map((run, index) => {
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

type ShareProps = Pick<Props, "reading" | "need"> & { texts: Texts };

/** The share of the pressure that the filter takes, and what that points to, where it was measured with and without. */
function FilterShare({ reading, need: { limits, supply, muchShare }, texts }: ShareProps) {
  if (!reading.before) return null;
  const share = assessFilterShare({ kind: "flow", runs: reading.before }, reading, limits);
  const { verdict } = assessFlow(reading, limits);
  const percent = (part: number) => showNumber(texts, part * 100, 0);
  return (
    <>
      {share && (
        <>
          <p>
            {texts("measure.share-said", {
              range: rangeText(texts, percent(share.range.low), percent(share.range.high)),
            })}
          </p>
          <Bar {...share.range} start={texts("measure.share-none")} end={texts("measure.share-all")} />
        </>
      )}
      <p>{texts(`measure.points-${pointOf({ share, without: verdict, supply }, muchShare)}`)}</p>
    </>
  );
}
