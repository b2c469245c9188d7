import { useRef } from "preact/hooks";
import type { JugUnit } from "../../measuring/index.ts";
import { showNumber } from "../../panel/screens/reading/index.ts";
import type { Texts } from "../../turn/index.ts";

/** How common jugs are marked (common practice, no source): the largest mark, a small and a numbered one. */
const jugs = {
  ml: { full: 500, small: 50, numbered: 100, step: 5 },
  "us-fl-oz": { full: 16, small: 1, numbered: 4, step: 0.25 },
  "us-cup": { full: 2, small: 0.25, numbered: 0.5, step: 0.05 },
};

type Props = { unit: JugUnit; volume: number; onSlid(volume: number): void; texts: Texts };

const TOP = 22;
const BOTTOM = 156;

/** A drawn jug with a water level that can be dragged, or slid from the keyboard; nothing for kitchen scales. */
export function Jug({ unit, volume, onSlid, texts }: Props) {
  const slider = useRef<HTMLInputElement>(null);
  if (unit === "g") return null;
  const { full, small, numbered, step } = jugs[unit];
  const shown = Math.min(full, Math.max(0, volume));
  const heightOf = (amount: number) => BOTTOM - (amount / full) * (BOTTOM - TOP);
  const level = heightOf(shown);
  const marks = Array.from({ length: full / small }, (_, index) => (index + 1) * small);

  function drag(event: PointerEvent & { currentTarget: SVGSVGElement }) {
    // Leave a pointer alone that only passes over.
    if (!event.buttons || !slider.current) return;
    const y = event.clientY - event.currentTarget.getBoundingClientRect().top;
    // The slider keeps the amount within its range and on its steps.
    slider.current.value = `${((BOTTOM - y) / (BOTTOM - TOP)) * full}`;
    onSlid(slider.current.valueAsNumber);
  }

  return (
    <>
      <svg class="jug" viewBox="0 0 150 172" aria-hidden="true" onPointerDown={drag} onPointerMove={drag}>
        <path class="water" d={`M26 ${level}H110V148q0 8-8 8H34q-8 0-8-8z`} />
        <path d="M12 8l14 16V148q0 8 8 8h68q8 0 8-8V8zM110 44h16q10 0 10 10v44q0 10-10 10h-16" />
        {marks.map((mark) => (
          <g key={mark}>
            <path d={`M110 ${heightOf(mark)}h${mark % numbered ? -12 : -22}`} />
            {mark % numbered === 0 && (
              <text x="82" y={heightOf(mark) + 5} text-anchor="end">
                {showNumber(texts, mark, 2)}
              </text>
            )}
          </g>
        ))}
        <path class="level" d={`M20 ${level}H116`} />
      </svg>
      <input
        ref={slider}
        type="range"
        min="0"
        max={full}
        step={step}
        value={shown}
        aria-label={texts("measure.slide")}
        aria-valuetext={`${showNumber(texts, shown, 2)} ${texts(`measure.unit-${unit}`)}`}
        onInput={(event) => onSlid(event.currentTarget.valueAsNumber)}
      />
    </>
  );
}
