import type { VolumeUnit } from "../../measurement/index.ts";
import type { Texts } from "../../session/index.ts";
import { showNumber } from "./format.ts";

/** How common jugs are marked (common practice, no source): the largest mark, a small and a numbered one. */
const jugs = {
  ml: { full: 500, small: 50, numbered: 100, step: 5 },
  "us-fl-oz": { full: 16, small: 1, numbered: 4, step: 0.25 },
  "us-cup": { full: 2, small: 0.25, numbered: 0.5, step: 0.05 },
};

type Props = { unit: VolumeUnit; volume: number; onSlid(volume: number): void; texts: Texts };

const TOP = 22;
const BOTTOM = 156;

/** A drawn jug with a water level that can be dragged, or slid from the keyboard; nothing for kitchen scales. */
export function Jug({ unit, volume, onSlid, texts }: Props) {
  if (unit === "g") return null;
  const { full, small, numbered, step } = jugs[unit];
  const heightOf = (amount: number) => BOTTOM - (Math.min(full, Math.max(0, amount)) / full) * (BOTTOM - TOP);
  const level = heightOf(volume);
  const marks = Array.from({ length: Math.round(full / small) }, (_, index) => (index + 1) * small);
  const said = `${showNumber(texts, Math.min(full, Math.max(0, volume)), 2)} ${texts(`measure.unit-${unit}`)}`;

  function drag(event: PointerEvent & { currentTarget: SVGSVGElement }) {
    // Leave a pointer alone that only passes over.
    if (!event.buttons) return;
    const { top, height } = event.currentTarget.getBoundingClientRect();
    const y = ((event.clientY - top) / height) * 172;
    const amount = ((BOTTOM - y) / (BOTTOM - TOP)) * full;
    const stepped = Math.round(Math.round(amount / step) * step * 100) / 100;
    onSlid(Math.min(full, Math.max(0, stepped)));
  }

  return (
    <>
      <svg class="jug" viewBox="0 0 150 172" aria-hidden="true" onPointerDown={drag} onPointerMove={drag}>
        <path class="water" d={`M${edge(level)} ${level}H110V148q0 8-8 8H34q-8 0-8-8z`} />
        <path
          class="glass"
          d="M12 8l14 16V148q0 8 8 8h68q8 0 8-8V8zM110 44h16q10 0 10 10v44q0 10-10 10h-16"
        />
        {marks.map((mark) => {
          const isNumbered = Math.abs(mark / numbered - Math.round(mark / numbered)) < 0.01;
          return (
            <g key={mark}>
              <path class="tick" d={`M110 ${heightOf(mark)}h${isNumbered ? -22 : -12}`} />
              {isNumbered && (
                <text x="82" y={heightOf(mark) + 5} text-anchor="end">
                  {showNumber(texts, mark, 2)}
                </text>
              )}
            </g>
          );
        })}
        <path class="level" d={`M${edge(level) - 6} ${level}H116`} />
      </svg>
      <label class="slide">
        <span class="visually-hidden">{texts("measure.slide")}</span>
        <input
          type="range"
          min="0"
          max={full}
          step={step}
          value={volume}
          aria-valuetext={said}
          onInput={(event) => onSlid(event.currentTarget.valueAsNumber)}
        />
      </label>
    </>
  );
}

/** Where the left wall is at a height: the spout leans out above y 24. */
function edge(y: number): number {
  return y < 24 ? 26 - ((24 - y) * 14) / 16 : 26;
}
