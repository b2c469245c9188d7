import type { PathMark } from "../../session/index.ts";

/** A small drawing for each station, about 16 px around its own middle; the water's way runs through y = 0. */
const glyphs: Record<string, string> = {
  tank: "M-7-8H7L5 8H-5zM-6-2H6",
  "stop-tap": "M0-4V-8M-5-8H5M-7-4H7V4H-7z",
  "supply-line": "M-8 0Q5 0 5-6T0-12-5-6 8 0",
  filter: "M-5-8H5V4L2 8H-2L-5 4zM-5-4H5",
  "inlet-valve": "M-7-6V6L7-6V6z",
  "fill-tube": "M-8-5H2L7 0V8H1V2L0 1H-8z",
  "ice-tray": "M-9-5H9L6 5H-6zM-3-5V5M3-5V5",
  "ice-bin": "M-8-1H8V8H-8zM-5-1V-8H2V-1",
  chute: "M-8-8H8L4 0V8H-4V0z",
  cold: "M0-8V8M-7-4 7 4M7-4-7 4",
  airflow: "M-8-4Q-4-8 0-4T8-4M-8 4Q-4 0 0 4T8 4",
  door: "M-5-8H5V8H-5zM1-2V2",
  seal: "M-6-8H6V8H-6zM-2-4H2V4H-2z",
  controls: "M-7-4H7M-7 4H7M-2-7V-1M2 1V7",
};

/** A state is a shape first: a tick, a tick in a ring, an exclamation mark, or nothing yet. */
const signs = {
  clear: "M-4 18l3 3 4-6",
  fixed: "M-4 18l3 3 4-6M-6 18A6 6 0 1 1-6 19",
  suspect: "M-1 14H1L0 17zM0 22V22",
  unseen: "",
};

/**
 * Where we are, as a picture: the water's way in the order given, what acts on it above, and what we know of each.
 * `label` says the same in a sentence. Mirrors itself where the text runs from right to left.
 */
export function IcePath({ path, label }: { path: PathMark[]; label: string }) {
  /** Stations side by side, from `start` percent of the width to the far edge. */
  const row = (start: number, y: number) =>
    path
      .filter((mark) => /cold|air|door|seal|controls/.test(mark.station) === start > 0)
      .map(({ station, state, here }, i, { length }) => (
        <svg x={`${start + ((i + 0.5) / length) * (100 - start)}%`} y={y} class={state}>
          {here && <circle r="12" />}
          <path d={glyphs[station] ?? glyphs.door} />
          <path d={signs[state]} />
        </svg>
      ));
  return (
    <svg role="img" aria-label={label} class="fs-path" width="100%" height="72">
      <rect x="50%" width="50%" height="72" rx="9" />
      <line x1="7%" x2="93%" y1="46" y2="46" />
      {row(50, 13)}
      {row(0, 46)}
      <text y="15">{(path.find((mark) => mark.here) ?? path.find((mark) => mark.state === "suspect"))?.name}</text>
    </svg>
  );
}
