import type { ComponentChildren } from "preact";
import type { Hazard, Signal, Texts } from "../../turn/index.ts";
import { Alert } from "./alert.tsx";

const mostSevereFirst: Signal[] = ["danger", "warning", "caution", "notice"];

/** The word that speaks for all of them: a screen has one panel, and the worst that can happen heads it. */
export const worstOf = (signals: Signal[]) => mostSevereFirst.find((one) => signals.includes(one));

/** Hazards in one panel, most severe first; `brief` only reminds. */
export function Hazards({ hazards, brief, texts }: { hazards: Hazard[]; brief?: boolean; texts: Texts }) {
  const worst = worstOf(hazards.map(({ signal }) => signal));
  return (
    worst && (
      <SignalPanel signal={worst} brief={brief} texts={texts}>
        {hazards.map((hazard) => (
          <p key={hazard.id}>{hazard.text}</p>
        ))}
      </SignalPanel>
    )
  );
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
