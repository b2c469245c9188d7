import { useId, useRef, useState } from "preact/hooks";
import type { ScreenProps } from "../../panel/frame/index.ts";
import { MeasureChoices, useEntry, useKept } from "../../panel/screens/reading/index.ts";
import type { NeedOf } from "../index.ts";
import { SealDrawing } from "./drawing.tsx";
import type { SealReading } from "./reading.ts";
import { SealResult } from "./result.tsx";
import { answers, carry, type Door, readSpots, Sign, type Spot } from "./spot.tsx";

const doors: Door[] = ["one", "two", "drawer"];

/** A strip of paper pulled at one place after the other around a shut door, and what the places look like together. */
export function Screen({ need, ...props }: ScreenProps & { need: NeedOf<"seal"> }) {
  const { texts } = props;
  const places = texts("measure.seal-places").split("\n");
  const { before } = need;
  const carried = before && carry(before.reading.spots, before.verdict, places.length);
  const [door, setDoor] = useKept<Door>(props, "door", before?.reading.door ?? "one", doors);
  const [kept, keepSpots] = useKept(props, "spots", carried?.join(" ") ?? "");
  const spots = readSpots(kept, places.length);
  const [at, setAt] = useState(() => Math.max(0, spots.indexOf("untried")));
  const { accepted, accept, edit } = useEntry<SealReading>();
  const asked = useId();
  const first = useRef<HTMLButtonElement>(null);
  const tried = spots.some((spot, place) => spot !== (carried?.[place] ?? "untried"));
  const next = nextUntried(spots, at);

  function say(spot: Spot) {
    const said = spots.map((each, place) => (place === at ? spot : each));
    edit(() => keepSpots(said.join(" ")));
    if (next !== undefined) setAt(next);
    // The last one that was missing: only a correction waits to be asked what it means.
    else if (spots[at] === "untried") accept(readingOf(said));
  }

  function readingOf(all: Spot[]): SealReading {
    return {
      kind: "seal",
      door,
      spots: all.map((spot) => (spot === "untried" || spot === "skipped" ? null : spot)),
    };
  }

  return (
    <div class="seal">
      <MeasureChoices
        legend="seal-door"
        values={doors}
        named={(each) => `seal-${each}`}
        chosen={door}
        onChosen={(chosen) => edit(() => setDoor(chosen))}
        texts={texts}
      />
      <SealDrawing
        door={door}
        spots={spots}
        at={at}
        places={places}
        onChosen={(place) => {
          setAt(place);
          // What comes next is to say how it is there; from the keyboard that would be many places away.
          first.current?.focus({ preventScroll: true });
        }}
        texts={texts}
      />
      {carried && <p class="small">{texts("measure.seal-slipped-only")}</p>}
      <p id={asked} class="place" role="status">
        {texts("measure.seal-place", { place: at + 1, places: spots.length })} <b>{places[at]}</b>
      </p>
      <fieldset class="felt" aria-labelledby={asked}>
        {answers.map((each) => (
          <button
            key={each}
            ref={each === "grips" ? first : null}
            type="button"
            aria-pressed={spots[at] === each}
            onClick={() => say(each)}
          >
            <Sign spot={each} />
            {texts(`measure.seal-${each}`)}
          </button>
        ))}
      </fieldset>
      <p class="small">{texts("measure.seal-how")}</p>
      <div class="answers">
        <button type="button" class="quiet" onClick={() => say("skipped")}>
          {texts("measure.seal-skip")}
        </button>
        <button type="button" class="quiet" aria-disabled={!at} onClick={() => setAt(Math.max(0, at - 1))}>
          {texts("measure.seal-back")}
        </button>
      </div>
      {accepted ? (
        <SealResult {...props} reading={accepted} limits={need.limits} places={places} />
      ) : (
        <button
          type="button"
          class={spots.includes("untried") ? "quiet" : "main"}
          aria-disabled={!tried}
          onClick={() => tried && accept(readingOf(spots))}
        >
          {texts("measure.show-result")}
        </button>
      )}
    </div>
  );
}

/** The next place, going on clockwise, that nobody has tried; undefined where there is no other. */
function nextUntried(spots: readonly Spot[], at: number): number | undefined {
  const onwards = spots.map((_, step) => (at + 1 + step) % spots.length);
  return onwards.find((place) => place !== at && spots[place] === "untried");
}
