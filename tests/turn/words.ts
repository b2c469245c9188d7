import type { Resource } from "../../src/turn/index.ts";

/** A few words of our own, so that this fails when the wrong ones are picked and not when a translator is busy. */
export const words: Resource = {
  ui: { locale: "en-GB" },
  standing: { "not-sure": "Not sure", cannot: "I can't", "cannot-wait": "I can't wait" },
  checks: {
    opening: { danger: { ask: "Anything dangerous?", answers: { none: "No", gas: "Gas" } } },
    "ice-bin": {
      name: "Bin",
      why: "A full bin stops it",
      look: {
        ask: "Look at the bin",
        how: "Open the drawer.\n\n  Look in.  \n",
        note: "It may be full.",
        answers: { fine: "All fine", "not-sure": "I can't tell" },
      },
      empty: { name: "Emptying", ask: "Empty it", answers: { emptied: "It is empty" } },
    },
    "freezer-temperature": { name: "Cold", read: { ask: "How cold?", verdicts: { fails: "too warm" } } },
    "flow-test": { name: "Flow" },
    "filter-age": { name: "Age" },
  },
  gates: {
    "water-supply": {
      name: "Water off",
      ask: "Turn the water off",
      why: "It could flood",
      ready: "All done",
      cannot: "I can't turn it off",
      items: { "tap-known": "I know the tap" },
      facts: { "local-codes": "Local codes apply" },
    },
  },
  hazards: { "water-supply": "Water may spill", "wet-floor": "Wet floor", "heavy-appliance": "It is heavy" },
  stations: { "ice-bin": "Ice bin" },
  findings: {
    "not-sure": "not sure",
    cannot: "could not",
    "gate-ready": "confirmed",
    "model-none": "no code",
    flow: "{{value}} ± {{error}} in {{seconds}} s, {{verdict}}",
    temperature: "{{value}} ± {{error}}, {{verdict}}",
    "filter-age": "{{low}} to {{high}} months, {{verdict}}",
    "filter-age-open": "{{low}} months or more, {{verdict}}",
    verdicts: { passes: "good", fails: "bad", unclear: "too close to call" },
  },
  causes: {
    "ice-maker-faulty": { is: "The ice maker is broken" },
    "bin-full": { fixed: "It was the full bin" },
  },
  parts: { "ice-maker": { name: "Ice maker", fitting: "For a professional" } },
  claims: { proved: "Proved" },
  who: {
    plumber: { name: "A plumber", tell: "the tap is stuck" },
    shop: { name: "The shop", tell: "hello" },
  },
  dangers: { gas: { heading: "Leave the house", do: "Open a window.\nLeave." } },
  endings: {
    part: { heading: "You need a part" },
    professional: { heading: "Call somebody" },
    "no-cause": { heading: "We did not find it" },
    model: { ask: "Which model?", how: "On the plate." },
  },
};
