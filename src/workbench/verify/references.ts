import {
  type CareRule,
  type CauseRule,
  type Check,
  careTimes,
  type Flow,
  type GateRule,
  type Machine,
  type PartRule,
  type Region,
  type Scenario,
} from "../../guide/index.ts";
import { checkNamesOfCheck, checkNamesOfTurns } from "./check-references.ts";
import { checkCircles, checkCondition } from "./condition-references.ts";
import { type Folder, nameOf } from "./folder.ts";
import { checkComplaints, checkDisturbances, checkQuantities } from "./machine-references.ts";
import { createNameCheck, type NameCheck, type Repair } from "./name-check.ts";
import { createNames } from "./names.ts";
import { checkRegion } from "./regions.ts";
import type { Report } from "./report.ts";

/** Reports names of things that do not exist; returns how each would be put right so that the rest can be judged. */
export function findLost(folder: Folder, report: Report): Repair[] {
  const repairs: Repair[] = [];
  const names = createNames(folder);
  for (const [file, kind] of folder.sound) {
    const { data } = folder.sources.get(file) ?? {};
    // Where id and file differ the file counts, as it does for every name that leads here.
    const named = { ...(data as object), id: nameOf(file) };
    const at = createNameCheck(file, names, report, repairs);
    if (kind === "causes") checkCauses(at, data as Flow["causes"]);
    else if (kind === "gates") checkGates(at, data as Pick<Flow, "access" | "gates">);
    else if (kind === "stations") checkStations(at, data as Flow["stations"]);
    else if (kind === "care") checkCare(at, data as Flow["care"]);
    else if (kind === "parts") checkParts(at, data as Flow["parts"]);
    else if (kind === "opening") checkNamesOfTurns(at, data as Flow["opening"]);
    else if (kind === "check") checkNamesOfCheck(at, named as Check);
    else if (kind === "scenario") checkScenario(at, named as Scenario);
    else if (kind === "region") checkRegion(at, data as Region);
    else if (kind === "quantities") checkQuantities(at, data as Machine["quantities"]);
    else if (kind === "complaints") checkComplaints(at, data as Machine["complaints"]);
    else if (kind === "disturbances") checkDisturbances(at, data as Machine["causes"]);
    else if (kind === "conditions") checkConditions(at, data as Flow["conditions"]);
  }
  return repairs;
}

function checkCauses(at: NameCheck, causes: Record<string, CauseRule>): void {
  for (const [id, { station, remedy, part, proof, cures }] of Object.entries(causes)) {
    at.one("station", "sits", station, [id, "station"]);
    if (remedy === "part" && part === undefined)
      at.report({ code: "part-without-entry/none", path: [id], at: "key" });
    if (part !== undefined) at.one("part", "part", part, [id, "part"]);
    if (cures) at.each("cause", "says/cause", cures, [id, "cures"]);
    if (proof !== undefined) checkCondition(at, [id, "proof"], proof);
  }
}

function checkConditions(at: NameCheck, conditions: Flow["conditions"]): void {
  for (const [id, condition] of Object.entries(conditions)) checkCondition(at, [id], condition);
  checkCircles(at, conditions);
}

function checkGates(at: NameCheck, { access, gates }: Pick<Flow, "access" | "gates">): void {
  for (const [id, hazards] of Object.entries(access)) at.each("hazard", "hazards", hazards, ["access", id]);
  for (const [id, { covers, picture }] of Object.entries<GateRule>(gates)) {
    at.each("hazard", "covers", covers, ["gates", id, "covers"]);
    at.one("picture", "picture", picture, ["gates", id, "picture"]);
  }
}

function checkStations(at: NameCheck, { above, access }: Flow["stations"]): void {
  at.each("station", "above", above, ["above"]);
  for (const [station, need] of Object.entries(access)) {
    at.one("station", "within", station, ["access", station]);
    at.one("access", "access", need, ["access", station]);
  }
}

function checkParts(at: NameCheck, parts: Record<string, PartRule>): void {
  for (const [id, { access, picture }] of Object.entries(parts)) {
    at.one("access", "access", access, [id, "access"]);
    if (picture) at.one("picture", "picture", picture, [id, "picture"]);
  }
}

function checkCare(at: NameCheck, { filter, ...steps }: CareRule): void {
  if (filter) {
    at.one("part", "part", filter.part, ["filter", "part"]);
    at.one("limit", "lasts", filter.months, ["filter", "months"]);
    if (filter.when) at.one("condition", "condition", filter.when, ["filter", "when"]);
  }
  for (const time of careTimes)
    for (const [place, { access, gate, when }] of steps[time].entries()) {
      at.one("access", "access", access, [time, place, "access"]);
      if (gate) at.one("gate", "gates", gate, [time, place, "gate"]);
      if (when) at.one("condition", "condition", when, [time, place, "when"]);
    }
}

function checkScenario(at: NameCheck, { when, complaint, proofs, checks }: Scenario): void {
  checkCondition(at, ["when"], when);
  at.one("complaint", "complaint", complaint, ["complaint"]);
  at.each("cause", "proofs", proofs, ["proofs"]);
  for (const [place, id] of proofs.entries()) {
    if (at.names.isProved(id)) continue;
    at.report({ code: "cause-without-proof", path: ["proofs", place], id });
    at.repair(["proofs", place]);
  }
  for (const [place, { check, when }] of checks.entries()) {
    const path = ["checks", place];
    at.one("check", "check", check, [...path, "check"], path);
    if (when !== undefined) checkCondition(at, [...path, "when"], when);
  }
}
