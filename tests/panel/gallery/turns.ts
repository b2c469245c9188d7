import type { PathMark, Turn, View } from "../../../src/turn/index.ts";

const stations: [string, string][] = [
  ["stop-tap", "Stop tap"],
  ["supply-line", "Water tube"],
  ["filter", "Filter"],
  ["inlet-valve", "Inlet valve"],
  ["fill-tube", "Fill tube"],
  ["ice-tray", "Ice tray"],
  ["ice-bin", "Ice bin"],
  ["chute", "Chute"],
  ["cold", "Cold"],
  ["door", "Door"],
  ["controls", "Controls"],
];

/** An ice path with some stations seen; every other one is not yet looked at. */
export function pathWith(states: Record<string, PathMark["state"]>, here: string | null): PathMark[] {
  return stations.map(([station, name]) => ({
    station,
    name,
    state: states[station] ?? "unseen",
    here: station === here,
    above: ["cold", "door", "controls"].includes(station),
  }));
}

const blank: Turn = {
  turn: "opening.first",
  kind: "choice",
  station: null,
  hazards: [],
  gated: false,
  heading: "",
  body: [],
  note: "",
  why: "",
  minutes: 0,
  tools: [],
  picture: null,
  answers: [],
  gate: null,
  reading: null,
  wait: null,
  ending: null,
  means: "",
  likely: [],
  left: 0,
  changed: [],
  path: pathWith({}, null),
  pathText: "Where the water goes.",
};

/** A turn with everything left out that is not given. */
export function turnWith(given: Partial<Turn>): Turn {
  return { ...blank, ...given };
}

/** A view around a turn, with nothing answered yet. */
export function viewOf(turn: Turn | null, given: Partial<View> = {}): View {
  return {
    turn,
    lines: [],
    notices: [],
    ways: ["danger", "help"],
    dangers: [
      { id: "smell", text: "I smell gas or burning" },
      { id: "wet-socket", text: "There is water near a socket or plug" },
      { id: "hiss", text: "Something hisses or leaks oil" },
      { id: "shock", text: "I felt a shock or a tingle" },
    ],
    ...given,
  };
}

export const quietAnswers: Turn["answers"] = [
  { id: "not-sure", text: "I'm not sure", role: "not-sure" },
  { id: "cannot", text: "I can't do this", role: "cannot" },
];

/** So many earlier answers. */
export function linesOf(count: number): View["lines"] {
  const said: [string, string][] = [
    ["Is anything dangerous right now?", "No, nothing"],
    ["What is the ice maker doing?", "It makes too little ice"],
    ["How does the water get in?", "Through a pipe from the mains"],
    ["Is the ice maker switched on?", "Yes, and its light is on"],
    ["Close the door on a strip of paper. Does it hold?", "It holds everywhere, all along the edge"],
    ["How cold is the freezer?", "−19 °C"],
  ];
  return said.slice(0, count).map(([title, answer], index) => ({
    index,
    turn: `line.${index}`,
    title,
    answer,
    drops: count - index - 1,
    canChange: true,
  }));
}
