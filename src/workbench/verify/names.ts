import type { Check } from "../../guide/index.ts";
import { pictures } from "../pictures/index.ts";
import type { Folder } from "./folder.ts";
import { valueAt } from "./shape.ts";

/** Kinds of things that flow files name; `word` is kept apart for likelihoods and priors. */
export type Named =
  | "access"
  | "cause"
  | "check"
  | "complaint"
  | "condition"
  | "gate"
  | "hazard"
  | "likelihood"
  | "limit"
  | "part"
  | "picture"
  | "quantity"
  | "station";

/** What can be named. Null: the file that would tell cannot be read, so nothing is held against a name. */
export type Names = {
  idsOf(kind: Named): string[] | null;
  /** The turns of a check or of the opening, its gates among them. */
  turnsOf(check: string): string[] | null;
  /** The answers that a turn can record, the standing ones and a wait's end among them. */
  answersOf(check: string, turn: string): string[] | null;
  takesReading(check: string, turn: string): boolean;
  /** The states of a quantity. */
  statesOf(quantity: string): string[] | null;
  /** False only for a cause that is there and has no proof. */
  isProved(cause: string): boolean;
};

const homes: Record<Exclude<Named, "check" | "picture">, [file: string, ...path: string[]]> = {
  access: ["gates.yaml", "access"],
  cause: ["causes.yaml"],
  complaint: ["machine/complaints.yaml"],
  condition: ["conditions.yaml"],
  gate: ["gates.yaml", "gates"],
  hazard: ["gates.yaml", "hazards"],
  likelihood: ["words.yaml", "likelihood"],
  limit: ["limits.yaml"],
  part: ["parts.yaml"],
  quantity: ["machine/quantities.yaml"],
  station: ["stations.yaml", "order"],
};

export const standing = ["not-sure", "cannot"];

/** Gathers what the files of a folder name. */
export function createNames(folder: Folder): Names {
  const checkOf = (id: string): Check | null => {
    const file = id === "opening" ? "opening.yaml" : `checks/${id}.yaml`;
    return folder.sound.has(file) ? (folder.sources.get(file)?.data as Check) : null;
  };
  return {
    idsOf(kind) {
      if (kind === "check") return folder.checks;
      if (kind === "picture") return Object.keys(pictures);
      const [file, ...path] = homes[kind];
      const found = valueAt(folder.sources.get(file)?.data, path);
      if (Array.isArray(found)) return found.map(String);
      return typeof found === "object" && found !== null ? Object.keys(found) : null;
    },
    turnsOf(id) {
      const check = checkOf(id);
      return check && [...Object.keys(check.turns), ...gateNamesOf(check)];
    },
    answersOf(id, name) {
      if (name.startsWith("gate-")) return ["ready", "cannot", "changed"];
      const turn = checkOf(id)?.turns[name];
      if (!turn) return null;
      const over = turn.kind === "wait" ? ["over"] : [];
      return [...Object.keys({ ...turn.answers, ...turn.verdicts }), ...standing, ...over];
    },
    isProved: (cause) => {
      const causes = folder.sources.get("causes.yaml")?.data;
      return valueAt(causes, [cause]) === undefined || valueAt(causes, [cause, "proof"]) !== undefined;
    },
    statesOf: (quantity) => {
      const states = valueAt(folder.sources.get("machine/quantities.yaml")?.data, [quantity, "states"]);
      return Array.isArray(states) ? states.map(String) : null;
    },
    takesReading: (id, name) => checkOf(id)?.turns[name]?.kind === "reading",
  };
}

/** The gates before some turn of a check, as its turns are named. */
function gateNamesOf({ gates = [], turns }: Check): string[] {
  const own = Object.values(turns).flatMap((turn) => turn.gates ?? []);
  return [...new Set([...gates, ...own])].map((gate) => `gate-${gate}`);
}
