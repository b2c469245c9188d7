import { useState } from "preact/hooks";
import {
  checkFlowRun,
  type FlowProblem,
  type FlowRun,
  type JugUnit,
  readNumber,
} from "../../../measurement/index.ts";
import type { ReadingNeed, Texts } from "../../../turn/index.ts";
import { typedBounds } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { Choices } from "./choices.tsx";
import { Form, readTyped, useEntry } from "./entry.tsx";
import { Field, Wrong } from "./field.tsx";
import { FlowResult } from "./flow-result.tsx";
import { showNumber, showSeconds } from "./format.ts";
import { Jug } from "./jug.tsx";
import { Step } from "./step.tsx";
import { Stopwatch } from "./stopwatch.tsx";

type Props = ScreenProps & { need: Extract<ReadingNeed, { instrument: "flow" }> };

/** Catching water in a jug by the clock: let it run, say how much there is, see what it means. */
export function Flow({ need, turn, actions, services, texts, busy }: Props) {
  const units = texts("measure.volume-units").split(" ") as JugUnit[];
  const { limits } = need;
  const [runs, setRuns] = useState<FlowRun[]>([]);
  const [aim, setAim] = useState(need.seconds);
  const [again, setAgain] = useState(true);
  const [unit, setUnit] = useState(units[0] ?? "ml");
  const [typed, setTyped] = useState("");
  // What is accepted here is the time of the run whose water is being measured.
  const { refusal, refuse, accepted: seconds, accept: setSeconds } = useEntry<number>();
  const read = readNumber(typed);
  const unitName = (each: JugUnit) => texts(`measure.unit-${each}`);

  function stopped(ran: number) {
    const [problem] = checkFlowRun({ volume: 0, unit, seconds: ran }, limits);
    refuse(problem ? explain(problem, "s", texts) : "");
    if (!problem) setSeconds(ran);
  }

  function keep() {
    const volume = readTyped(typed, texts("measure.flow-empty"), { refuse, texts });
    if (volume === null) return;
    const run = { volume, unit, seconds: seconds ?? aim };
    const [problem] = checkFlowRun(run, limits);
    if (problem) return refuse(explain(problem, unitName(unit), texts));
    // A log takes no more; whoever pours that often means the latest.
    setRuns([...runs, run].slice(-typedBounds.runs));
    setSeconds(null);
    setAgain(false);
  }

  function measureAgain(longer: boolean) {
    setAim(longer ? Math.min(need.seconds * 2, limits.longestSeconds) : need.seconds);
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
          <Choices
            legend={texts("measure.measured-in")}
            options={units.map((each) => [each, unitName(each)])}
            chosen={unit}
            onChosen={(chosen) => {
              setUnit(chosen);
              refuse("");
            }}
          />
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
              unit={unitName(unit)}
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
          runs={runs}
          need={need}
          busy={busy}
          texts={texts}
          onAgain={measureAgain}
          onRemoved={(index) => {
            const rest = runs.filter((_, place) => place !== index);
            setRuns(rest);
            if (!rest[0]) measureAgain(false);
          }}
          onUsed={() =>
            actions.measure(turn.turn, {
              kind: "flow",
              runs,
              ...(need.before ? { before: need.before } : {}),
            })
          }
        />
      </Step>
    </ol>
  );

  function type(text: string) {
    setTyped(text);
    refuse("");
  }
}

function explain({ field, code, value, min, max }: FlowProblem, unit: string, texts: Texts): string {
  const show = (number: number) => showNumber(texts, number);
  return texts(`measure.${field}-${code}`, { value: show(value), min: show(min), max: show(max), unit });
}
