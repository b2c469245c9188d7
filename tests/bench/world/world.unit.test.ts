import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { chanceOf } from "./chance.ts";
import { settledCold } from "./cold.ts";
import { said } from "./errors.ts";
import { faults } from "./faults/index.ts";
import { hazardAt } from "./hazards.ts";
import { drawHome } from "./home.ts";
import { judge } from "./judge.ts";
import { drawMachine, type Machine } from "./machine.ts";
import { gramsPerDay } from "./making.ts";
import { doAsTold, nothingPrepared } from "./prepare.ts";
import type { Scene } from "./scene.ts";
import { soundState } from "./state.ts";
import { runFor } from "./time.ts";
import { troublesOf } from "./troubles.ts";
import { dispenserFlow } from "./water.ts";

const machine: Machine = {
  ...drawMachine("a plumbed one"),
  water: "plumbed",
  iceAt: "freezer",
  iceDispenser: true,
  waterDispenser: true,
  filter: "inside",
  dayGrams: 2000,
};
const broken = (id: string, own: Machine = machine) => {
  const state = soundState(own);
  faults.find((fault) => fault.id === id)?.break(state, chanceOf(id), own);
  return state;
};

describe("the world", () => {
  it("takes nothing from flows/ nor from what is made of it but turns", () => {
    const folder = new URL(".", import.meta.url);
    const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) =>
      file.endsWith(".ts"),
    );
    const from = files.flatMap((file) =>
      [...readFileSync(new URL(file, folder), "utf8").matchAll(/from "(?:\.\.\/)+src\/([\w-]+)\//g)].map(
        ([, name]) => name,
      ),
    );
    expect([...new Set(from)].sort()).toEqual(["instruments", "session", "turn"]);
  });
});

describe("a machine of the world", () => {
  it("has no trouble when nothing is broken", () => {
    expect(troublesOf(soundState(machine), machine)).toEqual([]);
  });

  it("gives the trade's 15 ml/s at 25 psi, and less through a clogged filter", () => {
    const low = { ...soundState(machine), mainsKpa: 172.369 };
    expect(dispenserFlow(low, machine)).toBeGreaterThan(15);
    expect(dispenserFlow(broken("filter-clogged"), machine)).toBeLessThan(14);
  });

  it("makes less ice the warmer it is, and none above −8 °C", () => {
    const grams = (boxC: number) =>
      gramsPerDay(soundState(machine), machine, { freezerC: boxC, fridgeC: 4, boxC });
    expect(grams(-9)).toBeCloseTo(grams(-18) / 2, 6);
    expect(grams(-7)).toBe(0);
  });

  it("cools the fridge less than the freezer when frost closes its air", () => {
    const cold = settledCold(broken("defrost"), machine);
    expect(cold.fridgeC).toBeGreaterThan(8);
    expect(cold.freezerC).toBeLessThan(0);
  });

  it("is well after a thaw, and ill again when its defrost stays dead", () => {
    const state = broken("defrost");
    runFor(state, machine, 24, true);
    expect(state.frost).toBe(0);
    expect(troublesOf(state, machine)).toContain("warm-fridge");
  });

  it("freezes its tube again within two days when the heater is dead", () => {
    const state = broken("tube-heater-dead");
    state.tube = "open";
    runFor(state, machine, 48);
    expect(state.tube).toBe("iced");
  });

  it("is disturbed by every fault that it can have", () => {
    for (const fault of faults) {
      const own = [machine, ...Array.from({ length: 200 }, (_, place) => drawMachine(`${place}`))].find(
        (one) => fault.on?.(one) !== false,
      );
      expect(own, fault.id).toBeDefined();
      if (own) expect(fault.isThere(broken(fault.id, own)), fault.id).toBe(true);
    }
  });
});

describe("a fault of the world", () => {
  it.each(faults.map((fault) => [fault.id, fault] as const))(
    "%s is noticed in nine machines of ten",
    (id, fault) => {
      const own = Array.from({ length: 150 }, (_, place) => drawMachine(`${place}`)).filter(
        (one) => fault.on?.(one) !== false,
      );
      const noticed = own.filter((one, place) => {
        const state = soundState(one);
        fault.break(state, chanceOf(`${id} ${place}`), one);
        return troublesOf(state, one).length > 0 || state.hoursSinceChange < 24;
      });
      expect(noticed.length / own.length).toBeGreaterThanOrEqual(0.9);
    },
  );

  it("has a share of its own with a reason", () => {
    for (const { id, share, reason } of faults) {
      expect(share, id).toBeGreaterThan(0);
      expect(reason, id).toMatch(/^(judgement|common practice)/);
    }
  });
});

describe("homes of the world", () => {
  it("are the same for the same seed, and complain of something that is so", () => {
    const home = drawHome("7");
    expect(drawHome("7")).toEqual(home);
    expect(home.complaint.trouble).toBeTruthy();
  });

  it("have people of whom half move the machine and a third take a panel off", () => {
    const people = Array.from({ length: 600 }, (_, place) => drawHome(`p${place}`).person);
    const share = (is: (one: (typeof people)[number]) => boolean) => people.filter(is).length / people.length;
    expect(share(({ movesMachine }) => movesMachine)).toBeCloseTo(0.5, 1);
    expect(share(({ takesPanelOff }) => takesPanelOff)).toBeCloseTo(0.33, 1);
    expect(share(({ waits }) => waits)).toBeCloseTo(0.9, 1);
  });
});

describe("people of the world", () => {
  const answers = (count: number) => {
    const chance = chanceOf("looks");
    return Array.from({ length: count }, () => {
      const scene = { perfect: false, chance, slipped: new Map(), person: { slips: 1, doubts: 1 } };
      return said(scene as unknown as Scene, "any.look", "look", "bad", ["good", "bad", "odd"]);
    });
  };

  it("misread one look in six to eight and are not sure in one of ten", () => {
    const all = answers(4000);
    const misread = all.filter((one) => one === "good" || one === "odd").length / all.length;
    expect(misread).toBeGreaterThan(1 / 8);
    expect(misread).toBeLessThan(1 / 6);
    expect(all.filter((one) => one === "not-sure").length / all.length).toBeCloseTo(0.1, 1);
  });

  it("do what a turn says, sentence by sentence, but nothing that begins with 'if'", () => {
    const prepared = nothingPrepared();
    doAsTold(prepared, ["The stop tap stays closed. Pull the plug out."], 3);
    expect(prepared).toMatchObject({ tapShut: true, plugOut: true });
    doAsTold(prepared, ["Open the stop tap slowly. If it drips, close the tap again."], 4);
    expect(prepared.tapShut).toBe(false);
    doAsTold(prepared, ["Is it wet? Then close the stop tap first."], 5);
    expect(prepared.tapShut).toBe(false);
  });

  it("do what holds 'if all is well' when they say that it is", () => {
    const prepared = { ...nothingPrepared(), tapShut: true };
    doAsTold(prepared, ["If all is well, open the stop tap again, slowly."], 3);
    expect(prepared.tapShut).toBe(true);
    doAsTold(prepared, ["If all is well, open the stop tap again, slowly."], 4, true);
    expect(prepared.tapShut).toBe(false);
  });
});

describe("the judge", () => {
  const home = (id: string) => ({
    ...drawHome("j"),
    machine,
    hazard: null,
    faults: faults.filter((one) => one.id === id),
  });
  const ending = { who: null, part: null, claim: null, causes: [] };

  it("calls a filter right for a clogged one and an engineer needless", () => {
    const own = home("filter-clogged");
    const state = broken("filter-clogged");
    expect(judge(own, state, { ...ending, outcome: "part", part: "water-filter" })).toBe("right");
    expect(judge(own, state, { ...ending, outcome: "part", part: "ice-maker" })).toBe("wrong-part");
    expect(judge(own, state, { ...ending, outcome: "professional", who: "appliance-engineer" })).toBe(
      "needless",
    );
  });

  it("counts a danger that did not stop the conversation as missed", () => {
    const own = { ...home("jam"), hazard: "burning" as const };
    expect(judge(own, broken("jam"), { ...ending, outcome: "fixed" })).toBe("missed-hazard");
  });

  it("finds hands in an ice maker that was only just switched off", () => {
    const prepared = { ...nothingPrepared(), iceOffSince: 10 };
    expect(hazardAt("ice-under-maker.remove", prepared, 12, 0)).toEqual(["maker-still"]);
    expect(hazardAt("ice-under-maker.remove", prepared, 26, 0)).toEqual([]);
    expect(hazardAt("ice-under-maker.remove", { ...prepared, plugOut: true }, 12, 0)).toEqual([]);
  });
});
