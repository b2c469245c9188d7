import { useState } from "preact/hooks";
import { type ScreenProps, SignalPanel, worstOf } from "../../frame/index.ts";
import { Wrong } from "../reading/index.ts";

const MINUTE_MS = 60_000;

/**
 * A safety gate, with what can happen, in one panel: every line is ticked by hand, and nothing is remembered from the last
 * visit. Only over a reload a tick stays, as long as a confirmation would; it is the tap on the button that confirms.
 */
export function GateScreen({ turn, actions, services, texts, busy }: ScreenProps) {
  const { draft } = services;
  const { gate } = turn;
  const [ticked, setTicked] = useState(() => {
    const kept = draft.read(turn.turn);
    const age = (id: string) => Date.parse(services.now()) - Date.parse(kept[id] ?? "");
    const ids = gate?.items.map(({ id }) => id) ?? [];
    return ids.filter((id) => age(id) >= 0 && age(id) <= (gate?.minutes ?? 0) * MINUTE_MS);
  });
  const [told, setTold] = useState(false);
  if (!gate) return null;
  const left = gate.items.length - ticked.length;
  const signal = worstOf([gate.signal, ...turn.hazards.map((hazard) => hazard.signal)]) ?? gate.signal;
  const hazards = turn.hazards.map(({ id, text }) => <p key={id}>{text}</p>);
  // All of it was confirmed a moment ago: one line, one tap.
  if (gate.short) {
    const ids = gate.items.map(({ id }) => id);
    return (
      <SignalPanel signal={signal} texts={texts}>
        {hazards}
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
      <SignalPanel signal={signal} texts={texts}>
        {hazards}
        {gate.items.map(({ id, text }) => (
          <label key={id} class="tick">
            <input
              type="checkbox"
              checked={ticked.includes(id)}
              onChange={(event) => {
                const others = ticked.filter((each) => each !== id);
                const { checked } = event.currentTarget;
                draft.keep(turn.turn, id, checked ? services.now() : "");
                setTicked(checked ? [...others, id] : others);
              }}
            />
            <span>{text}</span>
          </label>
        ))}
      </SignalPanel>
      {gate.next && <p class="small">{texts("thread.next", { check: gate.next })}</p>}
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
