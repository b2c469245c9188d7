import { type Answers, flowOf, litresPerMinute, runsOut } from "../session/drive.ts";

export type Journey = {
  /** What the person has before them. Whatever is not told here is as on a sound machine. */
  sees: Answers;
  /** An answer that they give at first and take back after the next question. */
  takesBack?: [turn: string, answer: string];
  /** The turn at which the page is closed and opened again. */
  reloadsAt?: string;
  /** What they report at this turn by the way out that is always there. */
  reports?: [turn: string, danger: string];
  /** The kind of part whose picture the rating plate's code leads to. */
  part?: string;
  ending: { outcome: "fixed" | "part" | "professional" | "stopped"; cause?: string; who?: string };
};

/** One household for each scenario. What is wrong stands beside each; the ending must be just that. */
export const journeys: Record<string, Journey> = {
  // Somebody switched it off by a knock: nothing moves in a test run, and once on it makes ice in a day.
  "no-ice-plumbed": {
    sees: {
      "opening.symptom": "no-ice",
      "reset.test": "nothing-moved",
      "ice-maker-switch.look": "off",
      "wait-for-ice.wait": runsOut,
      "wait-for-ice.came": "ice-came",
    },
    reloadsAt: "wait-for-ice.wait",
    ending: { outcome: "fixed", cause: "switched-off" },
  },
  // The tank is full, clean and in place, the tray moves and stays dry, and the pump makes no sound twice over.
  "no-ice-tank": {
    sees: {
      "opening.symptom": "no-ice",
      "opening.supply": "tank",
      "reset.test": "moved-dry",
      "pump-run.listen": "silent",
      "pump-run.again": "silent-again",
    },
    part: "tank-pump",
    ending: { outcome: "part", cause: "pump-faulty" },
  },
  // The motor hums and nothing falls: ice holds the flap, and with the ice gone the dispenser works.
  "not-dispensed": {
    sees: {
      "opening.symptom": "not-dispensed",
      "dispense-listen.listen": "hums",
      "chute-flap.look": "iced",
      "chute-flap.clear-ice": "shuts-now",
      "try-dispenser.wait": runsOut,
      "try-dispenser.came": "comes",
    },
    reloadsAt: "chute-flap.clear-ice",
    ending: { outcome: "fixed", cause: "chute-iced" },
  },
  // A third of the water that there should be with the filter in, plenty with the plug in its place.
  "too-little": {
    sees: {
      "opening.symptom": "little-ice",
      "fresh-ice.look": "small",
      "flow-test.run": flowOf(5),
      "flow-without-filter.prepare": "plug-fitted",
      "flow-without-filter.run": flowOf(25),
      "tap-fill.fill": litresPerMinute(15),
    },
    part: "water-filter",
    ending: { outcome: "part", cause: "filter-clogged" },
  },
  // The water stands higher at one end of the tray; a second look at the bubble shows why.
  "odd-cubes": {
    sees: {
      "opening.symptom": "odd-ice",
      "opening.odd": "shape",
      "fresh-ice.look": "uneven",
      "level.look": "tilted",
      "wait-for-batch.wait": runsOut,
      "wait-for-batch.came": "right",
    },
    takesBack: ["level.look", "level"],
    ending: { outcome: "fixed", cause: "not-level" },
  },
  // Nobody has taken ice for weeks; what is made now does not stick.
  clumped: {
    sees: {
      "opening.symptom": "odd-ice",
      "opening.odd": "clumped",
      "ice-use.look": "old",
      "wait-for-batch.wait": runsOut,
      "wait-for-batch.came": "right",
    },
    ending: { outcome: "fixed", cause: "ice-stood" },
  },
  // A new machine that has run since this morning: all it needs is its first day.
  "after-change": {
    sees: {
      "opening.symptom": "after-change",
      "opening.changed": "new",
      "running-time.since": "under-a-day",
      "wait-for-ice.wait": runsOut,
      "wait-for-ice.came": "ice-came",
    },
    ending: { outcome: "fixed", cause: "too-soon" },
  },
  // Thick frost on the back wall, and a thaw that held for some weeks: it does not defrost itself any more, and no
  // householder can mend that.
  "too-warm": {
    sees: { "opening.symptom": "too-warm", "too-full.look": "frosted", "full-thaw.before": "came-back" },
    ending: { outcome: "professional", cause: "defrost-fault", who: "appliance-engineer" },
  },
  // The water from the kitchen tap has the same taste, so the machine is not to blame.
  "odd-taste": {
    sees: { "opening.symptom": "odd-ice", "opening.odd": "taste", "tap-water.compare": "same-taste" },
    ending: { outcome: "professional", cause: "water-odd", who: "water-supplier" },
  },
  // Looking for where the water shows, they find it at the socket.
  leaking: {
    sees: { "opening.symptom": "leaking", "opening.leak": "away" },
    reports: ["leak-where.look", "water-near-socket"],
    ending: { outcome: "stopped" },
  },
};
