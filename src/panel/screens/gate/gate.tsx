import { useState } from "preact/hooks";
import { type ScreenProps, SignalPanel } from "../../frame/index.ts";
import { Wrong } from "../reading/index.ts";

/** A safety gate: every line is ticked by hand, and nothing is remembered from the last visit. */
export function GateScreen({ turn, actions, texts, busy }: ScreenProps) {
  const [ticked, setTicked] = useState<string[]>([]);
  const [told, setTold] = useState(false);
  const { gate } = turn;
  if (!gate) return null;
  const left = gate.items.length - ticked.length;
  // All of it was confirmed a moment ago: one line, one tap.
  if (gate.short) {
    const ids = gate.items.map(({ id }) => id);
    return (
      <SignalPanel signal={gate.signal} texts={texts}>
        <button
          type="button"
          class="main wide"
          aria-disabled={busy}
          onClick={() => actions.confirmGate(turn.turn, ids)}
        >
          {gate.items.map(({ text }) => text).join(" ")}
        </button>
      </SignalPanel>
    );
  }
  return (
    <>
      <SignalPanel signal={gate.signal} texts={texts}>
        {gate.items.map(({ id, text }) => (
          <label key={id} class="tick">
            <input
              type="checkbox"
              checked={ticked.includes(id)}
              onChange={(event) => {
                const others = ticked.filter((each) => each !== id);
                setTicked(event.currentTarget.checked ? [...others, id] : others);
              }}
            />
            <span>{text}</span>
          </label>
        ))}
      </SignalPanel>
      {gate.facts.map((fact) => (
        <p key={fact} class="small">
          {fact}
        </p>
      ))}
      <div role="status">
        {told && left > 0 && <Wrong text={texts("measure.gate-left", { count: left })} />}
      </div>
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
