import { Component } from "preact";
import type { PathMark } from "../../turn/index.ts";

/** A drawing for each station, about 16 px around its own middle; the water runs through at y = 0. */
const glyphs: Record<string, string> = {
  tank: "M-7-8H7L5 8H-5zM-6-2H6",
  "stop-tap": "M0-4V-8M-5-8H5M-7-4H7V4H-7z",
  "supply-line": "M-8 0H-4A6 6 0 1 1 4 0H8",
  filter: "M-5-8H5V4L0 8-5 4zM-5-4H5",
  "inlet-valve": "M-7-6V6L7-6V6z",
  "fill-tube": "M-8-4H3L6-1V8H0V2H-8z",
  "ice-tray": "M-9-5H9L6 5H-6zM-3-5V5M3-5V5",
  "ice-bin": "M-8-3V8H8V-3M0-8-4-3 0 2 4-3z",
  chute: "M-8-8H8L4 0V8H-4V0z",
  cold: "M0-8V8M-7-4 7 4M7-4-7 4",
  door: "M-5-8H5V8H-5zM1-2V2",
  seal: "M-6-8H6V8H-6zM-2-4H2V4H-2z",
  controls: "M-7-4H7M-7 4H7M-2-7V-1M2 1V7",
};

/** A state is a shape before it is a colour: a tick, a tick in a ring, an exclamation mark, or nothing yet. */
const signs: Partial<Record<PathMark["state"], string>> = {
  clear: "M-3 18l2 3 4-5",
  fixed: "M-3 18l2 3 4-5M-6 18A6 6 0 1 1-6 19",
  suspect: "M-1 14H1L0 18zM0 22H0",
};

type Props = { path: PathMark[]; label: string };

/**
 * Where we are, as a picture: the water's way in the order given, what acts on it above, what is known of each
 * station, and the name of the one that is looked at (or else of the first suspect). An unknown station gets a plain
 * box. 72 px high at any width from 288 px; mirrored under `dir="rtl"`. `label` says the same in a sentence.
 */
export class IcePath extends Component<Props> {
  /** Many turns lie at one station: the picture is the dearest thing on the screen to draw. */
  override shouldComponentUpdate(next: Props): boolean {
    return JSON.stringify(next) !== JSON.stringify(this.props);
  }

  override render({ path, label }: Props) {
    const named = path.find((mark) => mark.here) ?? path.find((mark) => mark.state === "suspect");
    return (
      <svg role="img" aria-label={label} class="fs-path" width="100%" height="72">
        <rect x="57%" width="43%" height="72" rx="9" />
        <line x1="7%" x2="93%" y1="46" y2="46" />
        {row(path, 57, 13)}
        {row(path, 0, 46)}
        <text y="15">{named?.name}</text>
      </svg>
    );
  }
}

/** Stations side by side, from `start` percent of the width to the far edge; what acts from above starts at the freezer. */
function row(path: PathMark[], start: number, y: number) {
  return path
    .filter(({ above }) => above === start > 0)
    .map(({ station, state, here }, i, { length }) => (
      // biome-ignore lint/a11y/noSvgWithoutTitle: a place inside the picture; the picture itself has its label.
      <svg x={`${start + ((i + 0.5) / length) * (100 - start)}%`} y={y} class={state}>
        {here && <circle r="12" />}
        <path d={glyphs[station] ?? glyphs.door} />
        <path d={signs[state]} />
      </svg>
    ));
}
