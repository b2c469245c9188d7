import type { Turn, View } from "../../../src/turn/index.ts";
import { regionOf } from "../regions.ts";
import { linesOf, pathWith, quietAnswers, turnWith, viewOf } from "./turns.ts";

// Limits of the worked example W4; what a real flow uses stands in flows/limits.yaml.
export const flowNeed: Turn["reading"] = {
  instrument: "flow",
  region: regionOf("en-GB"),
  limits: {
    minimum: 15,
    aimSeconds: 10,
    coverage: 0.9,
    agreement: 2,
    jugReading: 5,
    jugScale: 0.05,
    scaleReading: 1,
    timing: 0.1,
    shortestSeconds: 3,
    longestSeconds: 60,
    largestMillilitres: 2000,
  },
  before: null,
  supply: null,
  muchShare: 0.3,
};

export const temperatureNeed: Turn["reading"] = {
  instrument: "temperature",
  region: regionOf("en-GB"),
  place: "freezer",
  targetC: -18,
  limits: {
    limitC: -15,
    fridgeC: 4,
    coverage: 0.95,
    displayError: 2,
    thermometerError: 1,
    settling: { freezer: 8, "ice-maker": 8, fridge: 60 },
    roomC: 25,
    coldestC: -40,
    warmestC: 40,
  },
};

export const filterNeed: Turn["reading"] = {
  instrument: "filter-age",
  region: regionOf("en-GB"),
  today: "2025-06-20",
  earliestYear: 1990,
  limits: {
    months: 6,
    litres: 750,
    people: 20,
    capacityLeast: 50,
    capacityMost: 10_000,
    perPerson: {
      ice: { low: 0.05, high: 0.5 },
      glasses: { low: 0.25, high: 1 },
      all: { low: 1, high: 3 },
    },
  },
};

const path = pathWith({ "stop-tap": "clear", door: "clear", filter: "suspect" }, "inlet-valve");

export const flowTurn = turnWith({
  turn: "flow.run",
  kind: "reading",
  station: "inlet-valve",
  heading: "How much water comes out in ten seconds?",
  body: ["Put a measuring jug under the water dispenser."],
  why: "Little water at the dispenser means little water in the ice tray.",
  hazards: [{ id: "slip", signal: "caution", text: "Spilt water is slippery. Lay a towel on the floor." }],
  minutes: 2,
  tools: ["a measuring jug", "a towel"],
  reading: flowNeed,
  answers: quietAnswers,
  path,
});

export const temperatureTurn = turnWith({
  turn: "freezer.temperature",
  kind: "reading",
  station: "cold",
  heading: "How cold is the freezer?",
  body: ["Read it without opening the door for long."],
  minutes: 1,
  reading: temperatureNeed,
  answers: quietAnswers,
  path,
});

export const filterTurn = turnWith({
  turn: "filter.age",
  kind: "reading",
  station: "filter",
  heading: "When was the water filter last changed?",
  why: "An old filter lets less water through.",
  reading: filterNeed,
  answers: quietAnswers,
  path,
});

export const modelTurn = turnWith({
  turn: "model.code",
  kind: "model",
  heading: "Which model is it?",
  body: [
    "Only with the exact code do we know which part fits.",
    "Copy every letter, digit, dash and slash. In bad light, take a photo and enlarge it.",
  ],
  minutes: 2,
  answers: [],
  path: pathWith({ filter: "suspect" }, null),
});

export const gateTurn = turnWith({
  turn: "back-panel.gate",
  kind: "gate",
  station: "inlet-valve",
  heading: "Before you open the back",
  body: ["Do every line, then tick it. You are asked again each time."],
  hazards: [{ id: "tip", signal: "warning", text: "A tall fridge can tip over. Move it with two people." }],
  gate: {
    id: "power-off",
    short: false,
    signal: "danger",
    items: [
      { id: "plug", text: "The plug is out, and I can see it" },
      { id: "water", text: "The stop tap is closed" },
      { id: "floor", text: "The floor is dry" },
    ],
    next: "The gated check",
    facts: ["Food keeps cold for 4 hours in the fridge while its door stays shut."],
    minutes: 15,
  },
  answers: [{ id: "cannot", text: "I can't do this", role: "cannot" }],
  path,
});

export const waitTurn = turnWith({
  turn: "first-ice.wait",
  kind: "wait",
  station: "ice-tray",
  heading: "Now give it a day",
  body: ["The tray fills and freezes again and again. The first ice comes after about a day."],
  wait: { from: "2025-06-20T09:00:00+01:00", until: "2025-06-21T09:00:00+01:00", inside: [] },
  answers: [
    { id: "ice", text: "There is ice", role: "own" },
    { id: "none", text: "Still no ice after the wait", role: "own" },
  ],
  path,
});

const lines = { lines: linesOf(3) };

/** Views of the screens that measure, open a gate, ask for the model or wait. */
export const measureFixtures: Record<string, View> = {
  gate: viewOf(gateTurn, lines),
  flow: viewOf(flowTurn, lines),
  "flow-volume": viewOf(flowTurn, lines),
  "flow-result": viewOf(flowTurn, lines),
  "flow-fails": viewOf(flowTurn, lines),
  "flow-unclear": viewOf(flowTurn, lines),
  "flow-bad": viewOf(flowTurn, lines),
  temperature: viewOf(temperatureTurn, lines),
  "temperature-result": viewOf(temperatureTurn, lines),
  "temperature-bad": viewOf(temperatureTurn, lines),
  "filter-age": viewOf(filterTurn, lines),
  "filter-age-date": viewOf(filterTurn, lines),
  "filter-age-season": viewOf(filterTurn, lines),
  "filter-age-moved": viewOf(filterTurn, lines),
  model: viewOf(modelTurn, lines),
  "model-exact": viewOf(modelTurn, lines),
  "model-plate": viewOf(modelTurn, lines),
  "model-near": viewOf(modelTurn, lines),
  "model-twin": viewOf(modelTurn, lines),
  "model-more": viewOf(modelTurn, lines),
  "model-digits": viewOf(modelTurn, lines),
  "model-unknown": viewOf(modelTurn, lines),
  "model-broken": viewOf(modelTurn, lines),
  "model-slow": viewOf(modelTurn, lines),
  "model-long": viewOf(modelTurn, lines),
  wait: viewOf(waitTurn, lines),
  "wait-over": viewOf(
    {
      ...waitTurn,
      wait: { from: "2025-06-18T09:00:00+01:00", until: "2025-06-19T09:00:00+01:00", inside: [] },
    },
    lines,
  ),
};
