import type { CauseRule, Check, Flow, GateRule, PartRule, Scenario } from "../../guide/index.ts";
import { referCheck, referOpening } from "./check-references.ts";
import { referCircles, referCondition } from "./condition-references.ts";
import { type Folder, nameOf } from "./folder.ts";
import { createNames } from "./names.ts";
import type { FileProblem } from "./problem.ts";
import { createReferee, type Mend, type Referee } from "./referee.ts";

/** Names of things that do not exist, and how each would be put right so that the rest can be judged. */
export function findLost(folder: Folder): { problems: FileProblem[]; mends: Mend[] } {
  const referee = createReferee(folder, createNames(folder));
  for (const [file, kind] of folder.sound) {
    const { data } = folder.sources.get(file) ?? {};
    // Where id and file differ the file counts, as it does for every name that leads here.
    const named = { ...(data as object), id: nameOf(file) };
    const at = referee.within(file);
    if (kind === "causes") referCauses(at, data as Flow["causes"]);
    else if (kind === "gates") referGates(at, data as Pick<Flow, "access" | "gates">);
    else if (kind === "stations") referStations(at, data as Flow["stations"]);
    else if (kind === "parts") referParts(at, data as Flow["parts"]);
    else if (kind === "opening") referOpening(at, data as Flow["opening"]);
    else if (kind === "check") referCheck(at, named as Check);
    else if (kind === "scenario") referScenario(at, named as Scenario);
    else if (kind === "conditions") referConditions(at, data as Flow["conditions"]);
  }
  return referee;
}

function referCauses(at: Referee, causes: Record<string, CauseRule>): void {
  for (const [id, { station, remedy, part, proof }] of Object.entries(causes)) {
    const subject = `Cause "${id}"`;
    at.refer("station", station, [id, "station"], `${subject} sits at`);
    if (remedy === "part" && part === undefined)
      at.report("part-without-entry", [id], `${subject} ends with a part but names none.`, null, "key");
    if (part !== undefined) at.refer("part", part, [id, "part"], `${subject} is put right by the part`);
    if (proof !== undefined) referCondition(at, [id, "proof"], proof, `The proof of cause "${id}"`);
  }
}

function referConditions(at: Referee, conditions: Flow["conditions"]): void {
  for (const [id, condition] of Object.entries(conditions))
    referCondition(at, [id], condition, `Condition "${id}"`);
  referCircles(at, conditions);
}

function referGates(at: Referee, { access, gates }: Pick<Flow, "access" | "gates">): void {
  for (const [id, hazards] of Object.entries(access))
    at.referAll("hazard", hazards, ["access", id], `Access "${id}" exposes to`);
  for (const [id, { covers }] of Object.entries<GateRule>(gates))
    at.referAll("hazard", covers, ["gates", id, "covers"], `Gate "${id}" covers`);
}

function referStations(at: Referee, { above, access }: Flow["stations"]): void {
  at.referAll("station", above, ["above"], "The picture draws above the water");
  for (const [station, need] of Object.entries(access)) {
    at.refer("station", station, ["access", station], "Access is given for the station");
    at.refer("access", need, ["access", station], `Station "${station}" needs the access`);
  }
}

function referParts(at: Referee, parts: Record<string, PartRule>): void {
  for (const [id, { access }] of Object.entries(parts))
    at.refer("access", access, [id, "access"], `Part "${id}" needs the access`);
}

function referScenario(at: Referee, scenario: Scenario): void {
  const subject = `Scenario "${scenario.id}"`;
  referCondition(at, ["when"], scenario.when, subject);
  for (const [cause, word] of Object.entries(scenario.priors)) {
    at.refer("cause", cause, ["priors", cause], `${subject} knows the cause`, ["priors", cause]);
    at.refer("prior", word, ["priors", cause], `${subject} calls the cause "${cause}"`);
  }
  at.referAll("cause", scenario.proofs, ["proofs"], `${subject} ends with`);
  for (const [place, cause] of scenario.proofs.entries()) {
    if (at.names.isProved(cause)) continue;
    at.report(
      "cause-without-proof",
      ["proofs", place],
      `${subject} ends with "${cause}", which has no proof.`,
    );
    at.mend(["proofs", place]);
  }
  for (const [place, { check, when }] of scenario.checks.entries()) {
    at.refer("check", check, ["checks", place, "check"], `${subject} asks the check`, ["checks", place]);
    if (when !== undefined)
      referCondition(at, ["checks", place, "when"], when, `${subject}, check "${check}",`);
  }
}
