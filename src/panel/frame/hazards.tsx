import type { ComponentChildren } from "preact";
import type { Hazard, Signal, Texts } from "../../turn/index.ts";
import { Alert } from "./alert.tsx";

const MOST_SEVERE_FIRST: Signal[] = ["danger", "warning", "caution", "notice"];

/** Hazards, one panel for each signal word; `brief` only reminds. */
export function Hazards({ hazards, brief, texts }: { hazards: Hazard[]; brief?: boolean; texts: Texts }) {
  return MOST_SEVERE_FIRST.map((signal) => {
    const told = hazards.filter((hazard) => hazard.signal === signal);
    return (
      told.length > 0 && (
        <SignalPanel key={signal} signal={signal} brief={brief} texts={texts}>
          {told.map((hazard) => (
            <p key={hazard.id}>{hazard.text}</p>
          ))}
        </SignalPanel>
      )
    );
  });
}

type PanelProps = { signal: Signal; brief?: boolean | undefined; texts: Texts; children: ComponentChildren };

/** A panel after ANSI Z535.6: the standard's colours, the signal word always written. */
export function SignalPanel({ signal, brief, texts, children }: PanelProps) {
  return (
    <div class={`signal ${signal} ${brief ? "brief" : ""}`}>
      <p class="word">
        {signal !== "notice" && <Alert />}
        {texts(`ui.signal-${signal}`)}
      </p>
      {children}
    </div>
  );
}
