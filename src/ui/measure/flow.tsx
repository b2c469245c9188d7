import { useState } from "preact/hooks";
import {
  checkFlowRun,
  type FlowProblem,
  type FlowRun,
  readNumber,
  type VolumeUnit,
} from "../../measurement/index.ts";
import type { ReadingNeed, Texts } from "../../session/index.ts";
import type { ScreenProps } from "../chat/index.ts";
import { Choices } from "./choices.tsx";
import { Field, type Refusal, Wrong } from "./field.tsx";
import { FlowResult } from "./flow-result.tsx";
import { showNumber, showSeconds } from "./format.ts";
import { Jug } from "./jug.tsx";
import { Step } from "./step.tsx";
import { Stopwatch } from "./stopwatch.tsx";

type Props = ScreenProps & { need: Extract<ReadingNeed, { instrument: "flow" }> };

/** Catching water in a jug by the clock: let it run, say how much there is, see what it means. */
export function Flow({ need, turn, actions, services, texts, busy }: Props) {
  const units = texts("measure.volume-units").split(" ") as VolumeUnit[];
  const [runs, setRuns] = useState<FlowRun[]>([]);
  const [aim, setAim] = useState(need.seconds);
  const [seconds, setSeconds] = useState<number | null>(null);
  const [again, setAgain] = useState(true);
  const [unit, setUnit] = useState<VolumeUnit>(units[0] ?? "ml");
  const [typed, setTyped] = useState("");
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const read = readNumber(typed);
  const step = seconds !== null ? 2 : again ? 1 : 3;

  const refuse = (text: string) => setRefusal({ text });
  const type = (text: string) => {
    setTyped(text);
    setRefusal(null);
  };

  function stopped(ran: number) {
    const [problem] = checkFlowRun({ volume: 0, unit: "ml", seconds: ran }, need.limits);
    if (problem) return refuse(explain(problem, "s", texts));
    setRefusal(null);
    setSeconds(ran);
  }

  function keep() {
    if (read.kind === "empty") return refuse(texts("measure.flow-empty"));
    if (read.kind === "unreadable") return refuse(texts("measure.unreadable", { typed: read.typed }));
    const run = { volume: read.value, unit, seconds: seconds ?? need.seconds };
    const [problem] = checkFlowRun(run, need.limits);
    if (problem) return refuse(explain(problem, texts(`measure.unit-${unit}`), texts));
    setRuns([...runs, run]);
    setSeconds(null);
    setAgain(false);
  }

  function measureAgain(longer: boolean) {
    setAim(longer ? Math.min(need.seconds * 2, need.limits.longestSeconds) : need.seconds);
    setTyped("");
    setAgain(true);
  }

  return (
    <ol class="steps">
      <Step
        number={1}
        at={step}
        title={texts("measure.run")}
        done={seconds === null ? "" : showSeconds(texts, seconds)}
      >
        <Stopwatch seconds={aim} services={services} texts={texts} onStopped={stopped} />
        {refusal && (
          <div role="alert">
            <Wrong id="run-wrong" text={refusal.text} />
          </div>
        )}
      </Step>
      <Step number={2} at={step} title={texts("measure.volume")} focus>
        <form
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            keep();
          }}
        >
          <Choices
            legend={texts("measure.measured-in")}
            options={units.map((each) => [each, texts(`measure.unit-${each}`)] as const)}
            chosen={unit}
            onChosen={(chosen) => {
              setUnit(chosen);
              setRefusal(null);
            }}
          />
          {unit === "g" && <p class="small">{texts("measure.scales-how")}</p>}
          <div class={unit === "g" ? "" : "pour"}>
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
              unit={texts(`measure.unit-${unit}`)}
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
        </form>
      </Step>
      <Step number={3} at={step} title={texts("measure.result")} focus>
        <FlowResult
          runs={runs}
          limits={need.limits}
          busy={busy}
          texts={texts}
          onAgain={measureAgain}
          onRemoved={(index) => {
            const rest = runs.filter((_, place) => place !== index);
            setRuns(rest);
            if (rest.length === 0) measureAgain(false);
          }}
          onUsed={() => actions.measure(turn.turn, { kind: "flow", runs })}
        />
      </Step>
    </ol>
  );
}

function explain({ field, code, value, min, max }: FlowProblem, unit: string, texts: Texts): string {
  const shown = {
    value: showNumber(texts, value),
    min: showNumber(texts, min),
    max: showNumber(texts, max),
    unit,
  };
  return texts(`measure.${field}-${code}`, shown);
}
