import type { Path } from "../condition/index.ts";
import { dangersOf } from "./dangers.ts";
import type { Flow, GateRule, Opening } from "./flow.ts";

/** When steps of care are told of, in the order of a screen. */
export const careTimes = ["use", "away", "return"] as const;

/** A text that a flow calls for: its key, and the place in the flow that calls for it. */
export type NeededText = { key: string; file: string; path: Path };

/** Every text that the flow's own ids call for. Texts of the screens belong to no flow and are not among them. */
export function textsNeeded(flow: Flow): NeededText[] {
  const all: NeededText[] = [];
  const call = (file: string, path: Path, ...keys: string[]) =>
    all.push(...keys.map((key) => ({ key, file, path })));
  for (const check of Object.values(flow.checks)) {
    const file = `checks/${check.id}.yaml`;
    call(file, ["id"], `checks.${check.id}.name`, `checks.${check.id}.why`);
    callForTurns(check, file, false, call);
    for (const [place, tool] of check.tools.entries()) call(file, ["tools", place], `tools.${tool}`);
  }
  callForTurns(flow.opening, "opening.yaml", true, call);
  for (const id of [...dangersOf(flow), "not-sure", "general"])
    call("opening.yaml", ["turns"], `dangers.${id}.heading`, `dangers.${id}.do`);
  for (const [id, gate] of Object.entries(flow.gates)) callForGate(id, gate, call);
  for (const id of Object.keys(flow.hazards)) call("gates.yaml", ["hazards", id], `hazards.${id}`);
  for (const [id, { remedy, who }] of Object.entries(flow.causes)) {
    call("causes.yaml", [id], `causes.${id}.is`);
    if (remedy === "self") call("causes.yaml", [id], `causes.${id}.fixed`);
    if (who) call("causes.yaml", [id, "who"], `who.${who}.name`, `who.${who}.tell`);
  }
  for (const [id, { tools }] of Object.entries(flow.parts)) {
    call("parts.yaml", [id], `parts.${id}.name`, `parts.${id}.fitting`);
    for (const [place, tool] of tools.entries()) call("parts.yaml", [id, "tools", place], `tools.${tool}`);
  }
  for (const [place, id] of flow.stations.order.entries())
    call("stations.yaml", ["order", place], `stations.${id}`);
  for (const { id, otherwise } of Object.values(flow.scenarios))
    call(
      `scenarios/${id}.yaml`,
      ["otherwise", "who"],
      `who.${otherwise.who}.name`,
      `who.${otherwise.who}.tell`,
    );
  for (const time of careTimes)
    for (const [place, { id }] of flow.care[time].entries())
      call("care.yaml", [time, place, "id"], `care.${time}.${id}`);
  for (const [code, { statutes }] of Object.entries(flow.regions))
    for (const [id, { says }] of Object.entries(statutes))
      call(`regions/${code}.yaml`, ["statutes", id, "says"], `statutes.${says}`);
  return all;
}

type Call = (file: string, path: Path, ...keys: string[]) => void;

function callForTurns({ id, turns }: Opening, file: string, named: boolean, call: Call): void {
  for (const [name, turn] of Object.entries(turns)) {
    const key = `checks.${id}.${name}`;
    const path = ["turns", name];
    call(file, path, `${key}.ask`, `${key}.how`);
    for (const [place, { stage }] of (turn.inside ?? []).entries())
      call(file, [...path, "inside", place, "stage"], `inside.${stage}`);
    // The opening's turns have little in common, so each needs a name of its own; elsewhere the check's will do.
    if (named) call(file, path, `${key}.name`);
    for (const where of ["answers", "verdicts"] as const)
      for (const answer of Object.keys(turn[where] ?? {}))
        call(file, [...path, where, answer], `${key}.${where}.${answer}`);
  }
}

function callForGate(id: string, { items, facts, dangers = [] }: GateRule, call: Call): void {
  const path = ["gates", id];
  call(
    "gates.yaml",
    path,
    ...["name", "ask", "why", "ready", "still", "cannot"].map((word) => `gates.${id}.${word}`),
  );
  for (const [place, item] of items.entries())
    call("gates.yaml", [...path, "items", place], `gates.${id}.items.${item}`);
  for (const [place, danger] of dangers.entries())
    call("gates.yaml", [...path, "dangers", place], `gates.${id}.${danger}`);
  for (const [place, fact] of facts.entries())
    call("gates.yaml", [...path, "facts", place], `gates.${id}.facts.${fact}`);
}
