import type { View } from "../../../src/turn/index.ts";
import { linesOf, pathWith, quietAnswers, turnWith, viewOf } from "./turns.ts";

const doorSeal = turnWith({
  turn: "door-seal.paper-strip",
  station: "door",
  heading: "Close the freezer door on a strip of paper. Does it hold?",
  body: [
    "Cut a strip of paper about as wide as two fingers.",
    "Close the door on it and pull gently. Try the top, the handle side and the bottom.",
  ],
  why: "A seal that lets warm air in keeps the freezer from getting cold enough to make ice.",
  minutes: 3,
  tools: ["a strip of paper"],
  picture: "paper-strip",
  answers: [
    { id: "holds", text: "It holds everywhere", role: "own" },
    { id: "slips", text: "It slips out in one place or more", role: "own" },
    ...quietAnswers,
  ],
  path: pathWith({ "stop-tap": "clear", controls: "fixed", filter: "suspect" }, "door"),
});

const first = turnWith({
  turn: "opening.danger",
  heading: "Is anything dangerous right now?",
  body: ["Water near a socket, a burning smell, a hiss, or a shock when you touched it."],
  answers: [
    { id: "no", text: "No, nothing dangerous", role: "own" },
    { id: "yes", text: "Yes, something is", role: "own" },
    { id: "not-sure", text: "I'm not sure", role: "not-sure" },
  ],
});

/** Views of the panel itself: first turn, a check, many lines, every signal word, notices, no turn yet. */
export const chatFixtures: Record<string, View> = {
  first: viewOf(first),
  choice: viewOf(doorSeal, { lines: linesOf(3), ways: ["danger", "ice", "help"] }),
  "choice-long": viewOf(doorSeal, { lines: linesOf(6), ways: ["danger", "ice", "help"] }),
  hazards: viewOf(
    turnWith({
      ...doorSeal,
      turn: "tray.look",
      hazards: [
        { id: "h1", signal: "danger", text: "If water has reached a plug or a socket, do not touch it." },
        {
          id: "h2",
          signal: "warning",
          text: "A tall fridge can tip over. Empty the door before you move it.",
        },
        {
          id: "h3",
          signal: "caution",
          text: "The tray can move and its heater gets hot. Keep your hands out.",
        },
        { id: "h4", signal: "caution", text: "Spilt water is slippery. Lay a towel on the floor." },
        { id: "h5", signal: "notice", text: "Throw away the first two batches of ice." },
      ],
    }),
    { lines: linesOf(2) },
  ),
  notices: viewOf(doorSeal, {
    lines: linesOf(1),
    notices: [
      { id: "welcome-back", text: "Welcome back. This is where you were." },
      {
        id: "memory-only",
        text: "This browser keeps nothing. If you close this page, your answers are gone.",
      },
    ],
  }),
  "long-words": viewOf(
    turnWith({
      ...doorSeal,
      heading: "Gefrierschranktürdichtungsprüfung mit einem Papierstreifenquerschnittsmuster",
      answers: [
        { id: "a", text: "Donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichen", role: "own" },
        ...quietAnswers,
      ],
    }),
    { lines: linesOf(2) },
  ),
  "no-turn": viewOf(null),
  "waiting-for-engine": viewOf(turnWith({ ...doorSeal, kind: "reading", turn: "flow.run" })),
};
