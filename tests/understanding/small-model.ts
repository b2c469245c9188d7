import { createWordsData } from "../../src/training/index.ts";
import { type Context, readModel } from "../../src/understanding/index.ts";
import { readPhrases } from "../../src/workbench/build/locales-folder.ts";
import { ownFlow } from "../own-flow.ts";

const own = readPhrases()["en-GB"] ?? {};

/** A few phrases beside the language's own words and rules: enough to tell a handful of things apart. */
export const phrases = {
  words: { ...(own["words"] as object), facts: "opening.symptom opening.changed opening.odd" },
  readings: own["readings"] ?? {},
  "danger-rules": own["danger-rules"] ?? {},
  "ask-rules": own["ask-rules"] ?? {},
  opening: {
    "opening.symptom": {
      "no-ice": "no ice\nit makes no ice\nnot making any ice\nice maker stopped",
      leaking: "it leaks\nwater on the floor\nleaking water\na puddle in front of it",
      "odd-ice": "the ice is odd\nthe ice looks strange\nice that smells\nthe ice sticks together",
    },
    "opening.odd": {
      taste: "it smells of garlic\nice smells of fish\nit tastes of plastic\na bad taste",
      clumped: "it sticks together\none big lump\na block of ice\nfrozen together",
    },
    "opening.changed": {
      "new-filter": "a new filter\nwe changed the filter\nsince the filter change",
      moved: "we moved house\nthe fridge was moved\nafter moving",
    },
  },
  seals: {
    "door-seal.look": {
      sound: "the seal is fine\nclean and soft\nlooks good",
      torn: "it is torn\nthe rubber is ripped\na tear in the seal",
    },
  },
  "said-alike": { "not-sure": { for: "*.not-sure", phrases: "not sure\ni dont know\nno idea" } },
  dangers: {
    burning: "it smells of burning\nsmoke comes out\na burning smell",
    shock: "i got a shock\nit tingles when i touch it",
  },
  harmless: { harmless: "no burning smell\nsparkling water\nnobody got a shock\nthe ice tastes burnt" },
  unrelated: { unrelated: "what is the weather like\ntell me a joke\nmy car is red\nplay some music" },
  asides: {
    patterns: { where: "where is the %\nwhere do i find the %", what: "what is a %\nwhat does the % do" },
    things: { filter: "filter, water filter", tank: "tank, water tank" },
    where: "filter tank",
    what: "filter",
    phrases: { "cost-part": "how much is the part\nwhat does it cost\nprice of the part" },
  },
};

/** Trained once for all tests that ask for it. */
export const smallData = createWordsData(
  phrases,
  { asides: {}, checks: {} },
  { buckets: 2 ** 12, perLabel: 60 },
);
export const small = readModel(smallData.model);

const region = ownFlow.regions["GB"] as Context["region"];

/** A turn of its own in Great Britain, on 27 November 2026. */
export const at = (turn: string, about: Partial<Context> = {}): Context => ({
  turn,
  answers: [],
  instrument: null,
  region,
  today: "2026-11-27",
  ...about,
});

export const symptom = at("opening.symptom", {
  answers: [
    { id: "no-ice", text: "It makes no new ice" },
    { id: "leaking", text: "Water where it should not be" },
    { id: "odd-ice", text: "The ice is odd" },
    { id: "not-sure", text: "Something else, or I'm not sure" },
  ],
});
export const seal = at("door-seal.look", {
  answers: [
    { id: "sound", text: "Clean, soft and whole" },
    { id: "torn", text: "Torn or hard" },
    { id: "not-sure", text: "I'm not sure" },
  ],
});
