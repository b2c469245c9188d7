import type { Hazard, Signal, Texts } from "../../session/index.ts";

const MOST_SEVERE_FIRST: Signal[] = ["danger", "warning", "caution", "notice"];

type Props = { hazards: Hazard[]; brief?: boolean; texts: Texts };

/** Hazards as signal panels after ANSI Z535.6: one panel for each signal word, the word always written. `brief` only reminds. */
export function Hazards({ hazards, brief, texts }: Props) {
  return MOST_SEVERE_FIRST.map((signal) => {
    const told = hazards.filter((hazard) => hazard.signal === signal);
    return (
      told.length > 0 && (
        <div key={signal} class={`signal ${signal} ${brief ? "brief" : ""}`}>
          <p class="word">
            {signal !== "notice" && <Alert />}
            {texts(`ui.signal-${signal}`)}
          </p>
          {told.map((hazard) => (
            <p key={hazard.id}>{hazard.text}</p>
          ))}
        </div>
      )
    );
  });
}

/** The plain alert triangle; the mark is a hole, so that it shows in every forced colour scheme. */
export function Alert() {
  return (
    <svg class="alert" viewBox="0 0 24 22" aria-hidden="true">
      <path fill="currentColor" fill-rule="evenodd" d="M12 0 24 22H0zM10.8 8v7h2.4V8zm0 9v2.4h2.4V17z" />
    </svg>
  );
}
