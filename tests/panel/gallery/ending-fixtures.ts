import type { Ending, Turn, View } from "../../../src/turn/index.ts";
import { linesOf, pathWith, turnWith, viewOf } from "./turns.ts";

const evidence: Ending["evidence"] = [
  {
    turn: "door-seal.paper-strip",
    check: "Does the door hold a strip of paper?",
    found: "It holds everywhere",
    proves: false,
  },
  {
    turn: "flow.run",
    check: "Water in ten seconds",
    found: "10.2 ml a second, give or take 0.7",
    proves: true,
  },
  { turn: "filter.bypass", check: "Water without the filter", found: "19 ml a second", proves: true },
];

export const partEnding: Ending = {
  outcome: "part",
  cause: "The water filter is clogged.",
  causeId: "filter-clogged",
  tried: [],
  back: ["Open the small tap again, slowly.", "Put the plug in with dry hands."],
  likely: [
    {
      causeId: "inlet-valve-faulty",
      cause: "The inlet valve doesn't let water in.",
      part: "inlet valve",
      station: "inlet-valve",
    },
  ],
  who: "",
  worth: ["The part is all you pay for.", "That is worth it in an old machine too."],
  age: {
    ask: "How old is it?",
    options: [
      { id: "old", text: "Over 10 years", worth: ["Compare it with a new machine."] },
      { id: "unknown", text: "Not sure", worth: ["The part is all you pay for."] },
    ],
  },
  until: "Meanwhile, freeze drinking water in an ice tray.",
  part: {
    kind: "water-filter",
    name: "Water filter",
    claim: "proved",
    claimText: "Water runs well without the filter and badly with it.",
    fitting: "You can fit it yourself without tools.",
    effortMinutes: 5,
    tools: ["a towel"],
    cautions: [{ id: "slip", signal: "caution", text: "Some water spills. Lay a towel on the floor." }],
    model: "WX-40B8/E",
    picture: "filter-seated",
  },
  evidence,
};

export function endingTurn(heading: string, ending: Ending): Turn {
  return turnWith({
    turn: `ending.${ending.outcome}`,
    kind: "ending",
    heading,
    ending,
    path: pathWith({ filter: "suspect", "stop-tap": "clear", door: "clear" }, null),
  });
}

const none = {
  back: [],
  part: null,
  causeId: null,
  likely: [],
  tried: [],
  worth: [],
  age: null,
  until: "",
};
const lines = { lines: linesOf(5) };
const part = endingTurn("A new water filter brings the ice back", partEnding);

/** Views of every ending; what the shop answers for the part depends on the fixture's name. */
export const endingFixtures: Record<string, View> = {
  fixed: viewOf(
    {
      ...endingTurn("The ice maker makes ice again", {
        ...none,
        outcome: "fixed",
        cause: "You switched the ice maker on.",
        who: "",
        evidence: evidence.slice(0, 1),
      }),
      body: ["You switched the ice maker on."],
    },
    lines,
  ),
  part: viewOf(part, lines),
  "part-out": viewOf(part, lines),
  "part-none": viewOf(part, lines),
  "part-broken": viewOf(part, lines),
  "part-slow": viewOf(part, lines),
  "part-failed": viewOf(part, lines),
  "part-picture": viewOf(part, lines),
  "part-variant": viewOf(part, lines),
  "part-serial": viewOf(part, lines),
  "part-unknown": viewOf(
    endingTurn("A new water filter is due", {
      ...partEnding,
      part: partEnding.part && {
        ...partEnding.part,
        model: null,
        claim: "due",
        claimText: "It is eight months old and lasts six.",
      },
    }),
    lines,
  ),
  professional: viewOf(
    endingTurn("This one needs a repairer", {
      ...none,
      outcome: "professional",
      cause: "",
      who: "A repairer who is allowed to work on refrigeration.",
      evidence,
    }),
    lines,
  ),
  stopped: viewOf(
    {
      ...endingTurn("Stop here and keep away", {
        ...none,
        outcome: "stopped",
        cause: "",
        who: "The emergency line of your gas supplier, from outside.",
        evidence: [],
      }),
      hazards: [
        { id: "gas", signal: "danger", text: "Do not touch a switch or a plug. Open the windows and leave." },
      ],
    },
    { lines: linesOf(1) },
  ),
};
