import type { Texts } from "../../turn/index.ts";
import { type Door, Sign, type Spot } from "./spot.tsx";

type Props = {
  door: Door;
  spots: readonly Spot[];
  /** The place that is asked for. */
  at: number;
  places: readonly string[];
  onChosen(place: number): void;
  texts: Texts;
};

/** How far right or down a place lies on the seal, in percent: clockwise from the top left corner, three to a side. */
function percentOf(place: number): string {
  const side = Math.floor(place / 3);
  const along = ((place % 3) * 100) / 3;
  return `${[along, 100, 100 - along, 0][side % 4]}%`;
}

/**
 * A door from the front with its twelve places, each a button that says how it is. The style sheet draws the door:
 * rules are no script.
 */
export function SealDrawing({ door, spots, at, places, onChosen, texts }: Props) {
  return (
    // A door has its left on the left in every language.
    <div class={`seal-door ${door}`} dir="ltr">
      <ol>
        {spots.map((spot, place) => (
          // What is across for one side is down for the next: three places on, or nine back.
          <li key={place} style={{ insetInlineStart: percentOf(place), top: percentOf(place + 9) }}>
            <button
              type="button"
              aria-current={place === at ? "step" : undefined}
              onClick={() => onChosen(place)}
            >
              <Sign spot={spot} />
              <span class="visually-hidden">
                {places[place]}: {texts(`measure.seal-${spot}`)}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </div>
  );
}
