import { useState } from "preact/hooks";
import type { Care, CareAnswer } from "../../turn/index.ts";
import type { ScreenProps } from "../frame/index.ts";
import { FilterLine } from "./filter-line.tsx";
import { Steps } from "./steps.tsx";

type Props = ScreenProps & { at: "top" | "end"; care: Care };

/** What is asked a day after an ending, and what keeps the machine well. */
export function AfterCare({ at, ...props }: Props) {
  return at === "top" ? <Question {...props} /> : <Keeping {...props} />;
}

function Question({ care, texts, busy }: Omit<Props, "at">) {
  const [said, setSaid] = useState<CareAnswer | null>(null);
  const question = said ? null : care.question();
  return (
    <div role="status">
      {question && (
        <div part="ending" class="card">
          <h3>{question.ask}</h3>
          <div class="answers">
            {question.answers.map(({ id, text }) => (
              <button
                key={id}
                type="button"
                class="own"
                disabled={busy}
                onClick={() => {
                  setSaid(id);
                  care.answer(id);
                }}
              >
                {text}
              </button>
            ))}
          </div>
        </div>
      )}
      {said === "yes" && <p class="small">{texts("care.thanks")}</p>}
      {said === "not-yet" && <p class="small">{texts("care.later")}</p>}
    </div>
  );
}

function Keeping({ care, services, texts }: Omit<Props, "at">) {
  const times = (["use", "away", "return"] as const).map((time) => ({ time, lines: care.steps(time) }));
  return (
    <div part="ending" class="card">
      <h3>{texts("care.title")}</h3>
      {times.map(
        ({ time, lines }) =>
          lines[0] && (
            <details key={time}>
              <summary>{texts(`care.times.${time}`)}</summary>
              <Steps lines={lines} texts={texts} />
            </details>
          ),
      )}
      <FilterLine care={care} now={services.now} texts={texts} />
    </div>
  );
}
