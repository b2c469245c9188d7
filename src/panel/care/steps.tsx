import { useState } from "preact/hooks";
import type { CareGate, CareLine, Texts } from "../../turn/index.ts";
import { SignalPanel } from "../frame/index.ts";

/** Steps in order. One behind a gate is not there before every line of the gate is ticked, each time it is opened. */
export function Steps({ lines, texts }: { lines: CareLine[]; texts: Texts }) {
  const free = lines.filter(({ gate }) => !gate);
  return (
    <>
      <ol class="how">
        {free.map(({ id, text }) => (
          <li key={id}>{text}</li>
        ))}
      </ol>
      {lines.map(({ id, text, gate }) => gate && <Gated key={id} gate={gate} text={text} texts={texts} />)}
    </>
  );
}

function Gated({ gate, text, texts }: { gate: CareGate; text: string; texts: Texts }) {
  const [ticked, setTicked] = useState<string[] | null>(null);
  if (!ticked)
    return (
      <button type="button" onClick={() => setTicked([])}>
        {texts("care.gate-open")}
      </button>
    );
  const isConfirmed = gate.items.every(({ id }) => ticked.includes(id));
  return (
    <>
      <SignalPanel signal={gate.signal} texts={texts}>
        <p>{gate.why}</p>
        {gate.items.map((item) => (
          <label key={item.id} class="tick">
            <input
              type="checkbox"
              checked={ticked.includes(item.id)}
              onChange={({ currentTarget }) =>
                setTicked([
                  ...ticked.filter((each) => each !== item.id),
                  ...(currentTarget.checked ? [item.id] : []),
                ])
              }
            />
            <span>{item.text}</span>
          </label>
        ))}
      </SignalPanel>
      {gate.facts.map((fact) => (
        <p key={fact} class="small">
          {fact}
        </p>
      ))}
      <p role="status">{isConfirmed && text}</p>
      {!isConfirmed && (
        <button type="button" onClick={() => setTicked(null)}>
          {texts("care.gate-shut")}
        </button>
      )}
    </>
  );
}
