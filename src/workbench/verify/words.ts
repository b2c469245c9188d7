import type { FileProblem, Kinds, Place, Spot } from "./problem.ts";
import { chartSentences } from "./words-of-chart.ts";

/**
 * What is said of each kind of fault: the one place where the verifier speaks English. Where one code has several
 * sentences, a word after a slash tells them apart.
 */
const sentences = {
  "yaml-syntax": ({ why }: { why: string }) => `Not readable as YAML: ${why}.`,
  "doubled-key": (_: Spot) => "This key stands here twice.",
  "missing-file": ({ file }: Spot) => `There is no file "${file}".`,
  "unknown-file": ({ file, suggestion }: Spot & Near) =>
    `No flow has a file "${file}".${suggestion ? "" : " Checks lie in checks/, scenarios in scenarios/, regions in regions/."}`,
  "id-and-file-differ": ({ id, name, kind }: Id & { name: string; kind: string }) =>
    `The file is named "${name}" but holds the ${kind} "${id}". Both must be the same.`,

  "missing-key": ({ path }: Spot) => `${path.length ? `"${path.at(-1)}"` : "The file"} is missing here.`,
  "missing-key/turn": ({ key, ...spot }: Spot & { key: string }) => `${subjectOf(spot)} has no "${key}".`,
  "missing-key/verdict": ({ key, ...spot }: Spot & { key: string }) =>
    `${subjectOf(spot)} does not go on from "${key}".`,
  "missing-key/by": (_: Spot) =>
    `The check shows what the model of the machine knows, so "by" must say by which sense it is observed.`,
  "missing-key/plain": ({ outcomes }: Spot & { outcomes: string[] }) =>
    `Just one outcome must neither see a cause nor show a state: what a check shows where nothing is wrong.${outcomes.length ? ` Here they are ${list(outcomes)}.` : ""}`,
  "quantity-upstream": ({ id, ...spot }: Spot & Id) =>
    `${subjectOf(spot)} follows "${id}", which does not come before it: upstream comes first.`,
  "spread-of-nothing": (_: Spot) => "No state here has a chance above 0.",
  "unknown-state": ({ id, quantity }: Spot & Id & { quantity: string }) =>
    `The quantity "${quantity}" has no state "${id}".`,
  "unknown-key": ({ key, known, suggestion }: { key: string; known: string[] } & Near) =>
    `"${key}" is not known here.${suggestion || !known.length ? "" : ` Known here: ${known.join(", ")}.`}`,
  "wrong-value": ({ path, why }: Spot & { why: string }) =>
    `${path.length ? `"${path.at(-1)}"` : "The file"}: ${why}.`,
  "wrong-value/choice": ({ value, known }: { value: string; known: string[] }) =>
    `"${value}" must be one of: ${known.join(", ")}.`,
  "wrong-value/against": ({ other, ...spot }: Spot & { other: string }) =>
    `${subjectOf(spot)} is compared with "${other}", which takes no reading.`,
  "wrong-value/verdict": ({ turn, ...spot }: Spot & { turn: string }) =>
    `${subjectOf(spot)} asks about "${turn}", but that turn takes no reading to have a verdict on.`,
  "wrong-value/likelihood": ({ id }: Id) =>
    `"${id}" must lie between 0 and 1, both excluded: people misread.`,
  "limit-without-source": ({ id }: Id) =>
    `Limit "${id}" has no source. Name where the number comes from, or write "common practice, no source".`,
  "missing-limit": ({ id }: Id) => `There is no limit "${id}", which an instrument needs.`,

  "unknown-access": lost,
  "unknown-cause": lost,
  "unknown-complaint": lost,
  "unknown-quantity": lost,
  "unknown-check": lost,
  "unknown-condition": lost,
  "unknown-gate": lost,
  "unknown-hazard": lost,
  "unknown-limit": lost,
  "unknown-picture": lost,
  "unknown-station": lost,
  "unknown-word": lost,
  "part-without-entry": lost,
  "part-without-entry/none": (spot: Spot) => `${subjectOf(spot)} ends with a part but names none.`,
  "cause-without-proof": ({ id, ...spot }: Spot & Id) =>
    `${subjectOf(spot)} ends with "${id}", which has no proof.`,
  "unknown-turn/start": ({ id, ...spot }: Spot & Id) =>
    `${subjectOf(spot)} starts with "${id}", which does not exist.`,
  "unknown-turn/greets": ({ id, ...spot }: Spot & Id) =>
    `${subjectOf(spot)} greets with "${id}", which does not exist.`,
  "unknown-turn": ({ turn, ...spot }: Spot & { turn: string }) =>
    `${subjectOf(spot)} asks about "${turn}", but there is no such turn.`,
  "unknown-check/turn": ({ turn, ...spot }: Spot & { turn: string }) =>
    `${subjectOf(spot)} asks about "${turn}", but there is no such check.`,
  "unknown-answer": ({ turn, answer, ...spot }: Spot & { turn: string; answer: string }) =>
    `${subjectOf(spot)} asks whether "${turn}" was "${answer}", which is none of its answers.`,
  "unknown-answer/verdict": ({
    answer,
    instrument,
    ...spot
  }: Spot & { answer: string; instrument: string }) =>
    `${subjectOf(spot)} goes on from "${answer}", which the instrument "${instrument}" never says.`,
  "unknown-target": ({ to, ...spot }: Spot & { to: string }) =>
    `${subjectOf({ ...spot, path: [] })} goes to "${to}", which does not exist.`,
  "unknown-finding": ({ finding, ...spot }: Spot & { finding: string }) =>
    `${subjectOf(spot)} comes from "${finding}", which the check cannot find.`,
  "finding-told-twice": ({ finding, before, ...spot }: Spot & { finding: string; before: string }) =>
    `${subjectOf(spot)} counts "${finding}", which outcome "${before}" counts already.`,
  "endless-condition": (spot: Spot) => `${subjectOf(spot)} means itself, directly or by way of others.`,

  "doubled-default": ({ language, other, ...spot }: Spot & { language: string; other: string }) =>
    `${subjectOf(spot)} is the default for "${language}", and so is region "${other}".`,
  "language-without-region": ({ tag }: { tag: string }) =>
    `No region is the default for "${tag}". Name the language at "default-for" where most of its readers live.`,

  "missing-text": ({ key, tags }: { key: string; tags: string[] }) =>
    `There is no text "${key}" in ${tags.join(", ")}.`,
  "unprovable-cause": ({ cause, ...spot }: Spot & { cause: string }) =>
    `No check of ${low(subjectOf(spot))} can prove the cause "${cause}".`,
  "unsettled-cause": ({ cause }: Spot & { cause: string }) =>
    `No check can prove the cause "${cause}" or put it right in any scenario that suspects it.`,
  "unused-cause": (spot: Spot) => `${subjectOf(spot)} belongs to no scenario, and no answer finds it.`,
  "part-without-proof": (spot: Spot) => `${subjectOf(spot)} ends with a part but has no proof.`,
  "part-without-decisive-check": (spot: Spot) =>
    `The proof of ${low(subjectOf(spot))} can hold without a finding that speaks for it, so a part could be sold on no proof.`,
  "part-without-catalogue-entry": ({ id }: Id) => `The catalogue has no part of the kind "${id}".`,
  "unneeded-check": ({ check, ...spot }: Spot & { check: string }) =>
    `No cause of ${low(subjectOf(spot))} needs the check "${check}": it tells nothing of any, and nothing rests on it.`,
  "unused-check": (spot: Spot) => `No scenario asks the ${low(subjectOf(spot))}.`,
  "loop-without-exit": ({ turns, file }: Spot & { turns: string[] }) =>
    `The turns ${list(turns)} of ${file} lead only to each other: no answer leads out.`,
  "loop-without-exit/repeats": ({ check, ...spot }: Spot & { check: string }) =>
    `Check "${check}" repeats in ${low(subjectOf(spot))} although an answer leaves its condition as it was: it would be asked for ever.`,
  unreachable: (state: State) => `Nothing leads to ${stateOf(state)}.`,
  "unreachable/scenario": (spot: Spot) =>
    `No answers of the opening lead to ${low(subjectOf(spot))}: nothing fits its condition, or an earlier scenario takes it all.`,
  "unreachable/check": ({ check, ...spot }: Spot & { check: string }) =>
    `Nothing in ${low(subjectOf(spot))} can make this condition hold, so the check "${check}" is never asked here.`,
  "dead-end": (state: State) => `From ${stateOf(state)} no answer leads on.`,
  "no-way-out": (_: Spot) => "No answer of the opening is marked as a danger, so none can be reported later.",
  "ungated-hazard": ({ turns, hazards }: { turns: string[]; hazards: string[] }) =>
    `A person can come to ${list(turns)} and meet ${list(hazards) || "a hazard"} without having confirmed a gate that covers it.`,
  "undeclared-hazard": ({ hazards, ...spot }: Spot & { hazards: string[] }) =>
    `${subjectOf(spot)} works where a person is exposed to ${list(hazards)}, but does not say so.`,
  "ungated-care": chartSentences["ungated-care"],
  "wrong-state": chartSentences["wrong-state"],
  "left-changed": chartSentences["left-changed"],
  "left-untold": chartSentences["left-untold"],
  "left-unsettled": chartSentences["left-unsettled"],
  "short-too-long": chartSentences["short-too-long"],
};

/** One fault in a folder of flow files, as it was found: data for tools and for one sentence. */
export type Fault = Kinds<typeof sentences> & Spot & Near;

type Id = { id: string };
type Near = { suggestion?: string | null };
type State = Spot & { turn: string };

/** How each part of a file names something else. */
const verbs = {
  above: "draws above the water",
  access: "needs the access",
  after: "shows a stage that begins",
  against: "is compared with the check",
  causes: "asks about the cause",
  check: "asks the check",
  clears: "clears",
  complaint: "is about the complaint",
  condition: "asks about the condition",
  covers: "covers",
  done: "asks about the check",
  finds: "finds",
  gates: "stands behind the gate",
  hazards: "exposes to",
  lasts: "lasts",
  part: "is put right by the part",
  picture: "shows the drawing",
  proofs: "ends with",
  quantity: "names the quantity",
  remedies: "remedies",
  "says/cause": "speaks of the cause",
  says: "says",
  shares: "shares out the cause",
  sits: "sits at",
  station: "looks at the station",
  suspects: "suspects",
  statutes: "has the law's limit",
  within: "stands in the list as",
};
/** The role in which a name stands in a file. */
export type Role = keyof typeof verbs;

const lacks: Record<string, string> = {
  part: "has no entry in parts.yaml",
  likelihood: "is no word for a likelihood in words.yaml",
};

/** A name that nothing has. */
function lost({ id, role, kind, ...spot }: Spot & Id & { role: Role; kind: string }): string {
  return `${subjectOf(spot)} ${verbs[role]} "${id}", which ${lacks[kind] ?? "does not exist"}.`;
}

const kinds: Record<string, string> = { causes: "Cause", conditions: "Condition", parts: "Part" };

/** What a place in the files belongs to, as a sentence begins with it. */
function subjectOf({ file, path }: Spot): string {
  const [first = "", second] = path;
  const [, folder, name = ""] = /^(?:(checks|scenarios|regions)\/)?(.*)\.yaml$/.exec(file) ?? [];
  if (folder === "scenarios") return `Scenario "${name}"`;
  if (folder === "regions") return `Region "${name}"`;
  if (folder === "checks" || name === "opening") {
    const whole = folder ? `Check "${name}"` : "The opening";
    return first === "turns" || first === "outcomes" ? `${whole}, ${first.slice(0, -1)} "${second}",` : whole;
  }
  if (name.startsWith("machine/causes/")) return `Cause "${first}"`;
  if (name.startsWith("machine/"))
    return `${name.endsWith("quantities") ? "Quantity" : "Complaint"} "${first}"`;
  if (kinds[name]) return `${kinds[name]} "${first}"`;
  if (name === "stations") return first === "above" ? "The picture" : `Station "${second}"`;
  if (name === "care") return first === "filter" ? "The care of the filter" : `The care, "${first}",`;
  return `${first === "gates" ? "Gate" : "Access"} "${second}"`;
}

/** A turn, gate or scenario as the chart has it. */
function stateOf({ turn, ...spot }: State): string {
  const subject = subjectOf({ ...spot, path: [] });
  return subject.startsWith("Scenario") ? low(subject) : `turn "${turn}" of ${low(subject)}`;
}

const low = (subject: string) => subject.charAt(0).toLowerCase() + subject.slice(1);
const list = (words: string[]) => words.map((word) => `"${word}"`).join(", ");

/** A fault with one sentence for the person who edits the file, and with what was probably meant. */
export function tell(fault: Fault, place: Place): FileProblem {
  const { code, suggestion, at: _, ...data } = fault;
  const said = (sentences[code] as (one: Fault) => string)(fault);
  return {
    ...data,
    ...place,
    code: code.replace(/\/.*$/, ""),
    message: suggestion ? `${said} Did you mean "${suggestion}"?` : said,
    ...(suggestion ? { suggestion } : {}),
  };
}

/** The kinds of faults that can be told of a folder. */
export const codes = [...new Set(Object.keys(sentences).map((code) => code.replace(/\/.*$/, "")))];
