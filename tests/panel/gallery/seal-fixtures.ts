import type { Turn, View } from "../../../src/turn/index.ts";
import { regionOf } from "../regions.ts";
import { linesOf, pathWith, quietAnswers, turnWith, viewOf } from "./turns.ts";

export const sealTurn = turnWith({
  turn: "door-seal.paper-strip",
  kind: "reading",
  station: "door",
  heading: "Where does the seal grip a strip of paper?",
  body: [
    "Lay a strip of paper across the seal and shut the door on it.",
    "Pull the strip out slowly. Say how it felt, then go on to the next place.",
    "The drawing shows where. Leave out what you cannot reach.",
  ],
  why: "A leaky seal lets warm air in.",
  minutes: 5,
  picture: "paper-strip",
  reading: { instrument: "seal", region: regionOf("en-GB"), limits: { longestArc: 3 }, before: null },
  answers: quietAnswers,
  path: pathWith({ "stop-tap": "clear", controls: "fixed" }, "door"),
});

const inside = [
  { text: "The tray and the air around it get cold.", from: "2025-06-20T09:00:00+01:00" },
  { text: "Water runs into the tray and freezes.", from: "2025-06-20T13:00:00+01:00" },
  { text: "The tray tips its ice into the bin, again and again.", from: "2025-06-20T15:00:00+01:00" },
];

/** A day's wait from nine in the morning, British summer time, with what goes on meanwhile. */
export const waitInsideTurn: Turn = turnWith({
  turn: "wait-for-ice.wait",
  kind: "wait",
  station: "ice-tray",
  heading: "Is there ice yet?",
  body: ["Open the door as little as you can."],
  wait: { from: "2025-06-20T09:00:00+01:00", until: "2025-06-21T09:00:00+01:00", inside },
  answers: [
    { id: "ice-came", text: "Ice has come", role: "own" },
    { id: "keep-checking", text: "Keep checking instead", role: "own" },
  ],
  path: pathWith({}, "ice-tray"),
});

const lines = { lines: linesOf(3) };

/** Views of the survey of a door seal, and of a wait with what goes on inside. */
export const sealFixtures: Record<string, View> = {
  seal: viewOf(sealTurn, lines),
  "seal-half": viewOf(sealTurn, lines),
  "seal-two": viewOf(sealTurn, lines),
  "seal-drawer": viewOf(sealTurn, lines),
  "seal-result": viewOf(sealTurn, lines),
  "seal-unclear": viewOf(sealTurn, lines),
  "wait-inside": viewOf(waitInsideTurn, lines),
  "wait-reminded": viewOf(waitInsideTurn, lines),
};
