import { useState } from "preact/hooks";
import { readNumber } from "../../measuring/index.ts";
import type { ScreenProps } from "../../panel/frame/index.ts";
import {
  Field,
  Form,
  readTyped,
  Stopwatch,
  showNumber,
  showRange,
  showSeconds,
  useEntry,
  useKept,
  useUnits,
  Wrong,
} from "../../panel/screens/reading/index.ts";
import { type NeedOf, readingBounds } from "../index.ts";
import { checkFlowRun, type FlowProblem } from "./check.ts";
import { Jug } from "./jug.tsx";
import { readRuns, writeRuns } from "./kept-runs.ts";
import type { FlowRun } from "./reading.ts";
import { FlowResult } from "./result.tsx";
import { Step } from "./step.tsx";

/** Catching water in a jug by the clock: let it run, say how much there is, see what it means. */
export function Screen({ need, ...props }: ScreenProps & { need: NeedOf<"flow"> }) {
  const { services, texts } = props;
  const { limits } = need;
  const [kept, keepRuns] = useKept(props, "runs", "");
  const [before] = useState(kept);
  const runs = readRuns(kept, limits);
  const [aim, setAim] = useState(limits.aimSeconds);
  const [again, setAgain] = useState(!runs[0]);
  const [typed, setTyped] = useKept(props, "volume", "");
  // What is accepted here is the time of the run whose water is being measured.
  const [ran, keepRan] = useKept(props, "seconds", "");
  const isTime = (passed: number) => !checkFlowRun({ volume: 0, unit: "ml", seconds: passed }, limits)[0];
  const {
    refusal,
    refuse,
    accepted: seconds,
    accept,
  } = useEntry<number>(ran && isTime(Number(ran)) ? Number(ran) : null);
  const { unit, unitName, unitChoices } = useUnits(need.region.units.volume, props, (change) => {
    change();
    refuse("");
  });
  const read = readNumber(typed);

  const explain = (problem: FlowProblem, unit: string) =>
    refuse(texts(`measure.${problem.field}-${problem.code}`, { ...showRange(texts, problem), unit }));

  function setSeconds(passed: number | null) {
    keepRan(`${passed ?? ""}`);
    accept(passed);
  }

  const setRuns = (next: FlowRun[]) => keepRuns(writeRuns(next));

  function stopped(passed: number) {
    const [problem] = checkFlowRun({ volume: 0, unit, seconds: passed }, limits);
    if (problem) return explain(problem, "s");
    refuse("");
    setSeconds(passed);
  }

  function keep() {
    const volume = readTyped(typed, texts("measure.flow-empty"), { refuse, texts });
    if (volume === null) return;
    const run = { volume, unit, seconds: seconds ?? aim };
    const [problem] = checkFlowRun(run, limits);
    if (problem) return explain(problem, unitName);
    // A log takes no more; whoever pours that often means the latest.
    setRuns([...runs, run].slice(-readingBounds.runs));
    setSeconds(null);
    setAgain(false);
  }

  function measureAgain(longer: boolean) {
    setAim(longer ? Math.min(limits.aimSeconds * 2, limits.longestSeconds) : limits.aimSeconds);
    setTyped("");
    setAgain(true);
  }

  const step = { at: seconds !== null ? 2 : again ? 1 : 3 };
  return (
    <ol class="steps">
      <Step
        {...step}
        number={1}
        title={texts("measure.run")}
        done={seconds === null ? "" : showSeconds(texts, seconds)}
      >
        <Stopwatch seconds={aim} services={services} texts={texts} onStopped={stopped} />
        {refusal.text && (
          <div role="alert">
            <Wrong text={refusal.text} />
          </div>
        )}
      </Step>
      <Step {...step} number={2} title={texts("measure.volume")}>
        <Form onSent={keep}>
          {unitChoices}
          {unit === "g" && <p class="small">{texts("measure.scales-how")}</p>}
          <div class={unit === "g" ? "" : "side-by-side pour"}>
            <Jug
              unit={unit}
              volume={read.kind === "value" ? read.value : 0}
              onSlid={(volume) => type(showNumber(texts, volume, 2))}
              texts={texts}
            />
            <Field
              label={texts("measure.volume-label")}
              typed={typed}
              onTyped={type}
              refusal={refusal}
              keys="decimal"
              unit={unitName}
              short
            />
          </div>
          <div class="answers">
            <button type="submit" class="main">
              {texts("measure.show-result")}
            </button>
            <button type="button" class="quiet" onClick={() => setSeconds(null)}>
              {texts("measure.run-again")}
            </button>
          </div>
        </Form>
      </Step>
      <Step {...step} number={3} title={texts("measure.result")} leavesFocus>
        <FlowResult
          key={runs.length}
          {...props}
          still={kept === before}
          reading={{ kind: "flow", runs, ...(need.before ? { before: need.before } : {}) }}
          need={need}
          onAgain={measureAgain}
          onRemoved={(index) => {
            const rest = runs.filter((_, place) => place !== index);
            setRuns(rest);
            if (!rest[0]) measureAgain(false);
          }}
        />
      </Step>
    </ol>
  );

  function type(text: string) {
    setTyped(text);
    refuse("");
  }
}
