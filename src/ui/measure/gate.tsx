import { useState } from "preact/hooks";
import { Alert, type ScreenProps } from "../chat/index.ts";

/** A safety gate: every line is ticked by hand, each time; nothing is remembered from the last visit. */
export function GateScreen({ turn, actions, texts, busy }: ScreenProps) {
  const [ticked, setTicked] = useState<string[]>([]);
  const [told, setTold] = useState(false);
  const { gate } = turn;
  if (!gate) return null;
  const left = gate.items.length - ticked.length;
  return (
    <>
      <div class={`signal ${gate.signal}`}>
        <p class="word">
          {gate.signal !== "notice" && <Alert />}
          {texts(`ui.signal-${gate.signal}`)}
        </p>
        {gate.items.map(({ id, text }) => (
          <label key={id} class="tick">
            <input
              type="checkbox"
              checked={ticked.includes(id)}
              onChange={(event) =>
                setTicked(
                  event.currentTarget.checked ? [...ticked, id] : ticked.filter((each) => each !== id),
                )
              }
            />
            <span>{text}</span>
          </label>
        ))}
      </div>
      {gate.facts.length > 0 && (
        <ul class="facts">
          {gate.facts.map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
      )}
      <p role="status" class="wrong">
        {told && left > 0 && texts("measure.gate-left", { count: left })}
      </p>
      <button
        type="button"
        class="main wide"
        aria-disabled={busy}
        onClick={() => (left > 0 ? setTold(true) : actions.confirmGate(turn.turn, ticked))}
      >
        {texts("measure.gate-confirm")}
      </button>
    </>
  );
}
