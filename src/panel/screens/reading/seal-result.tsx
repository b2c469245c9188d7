import { useEffect, useRef } from "preact/hooks";
import { assessSeal, type SealLimits, type SealReading } from "../../../measurement/index.ts";
import type { Texts } from "../../../turn/index.ts";
import { marks } from "./result.tsx";

type Props = {
  reading: SealReading;
  limits: SealLimits;
  places: readonly string[];
  busy: boolean;
  onUsed(): void;
  texts: Texts;
};

/** What the places look like together, and which of them slip, before it is used. */
export function SealResult({ reading, limits, places, busy, onUsed, texts }: Props) {
  const { pattern, verdict, slips, at, weak } = assessSeal(reading, limits);
  const tried = reading.spots.filter(Boolean).length;
  const heard = useRef<HTMLParagraphElement>(null);
  useEffect(() => heard.current?.focus(), []);
  return (
    <div class={`card ${/passes|unclear/.test(verdict) ? verdict : "fails"}`}>
      <p class="verdict" ref={heard} tabIndex={-1}>
        <svg class="mark" viewBox="0 0 24 24" aria-hidden="true">
          <path d={marks[verdict]} />
        </svg>
        {texts(`measure.seal-${pattern}`)}
      </p>
      <p>{texts(`measure.seal-${pattern}-means`)}</p>
      {tried < places.length && <p>{texts("measure.seal-tried", { count: tried, places: places.length })}</p>}
      {slips > 0 && (
        <>
          <p>{texts("measure.seal-slipping", { count: slips })}</p>
          <ul class="slipping">
            {at.map((place) => (
              <li key={place}>{places[place]}</li>
            ))}
          </ul>
        </>
      )}
      {weak > 0 && <p>{texts("measure.seal-weak", { count: weak })}</p>}
      <div class="answers">
        <button
          type="button"
          class={verdict === "unclear" ? "" : "main"}
          aria-disabled={busy}
          onClick={onUsed}
        >
          {texts("measure.use")}
        </button>
      </div>
    </div>
  );
}
