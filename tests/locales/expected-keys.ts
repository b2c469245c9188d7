import { everyPreparation, type Flow } from "../../src/guide/index.ts";

/** The texts that a flow calls for, as dotted keys: those it must have, and those that it may have. */
export type ExpectedKeys = { needed: string[]; allowed: string[] };

/** All but the tap, of which more is said. */
const preparations = everyPreparation.filter((one) => one !== "water");
const endings = ["fixed", "later", "part", "professional", "no-cause"];

/** Texts that belong to no id of flows/: the screens and the session ask for them by these names. */
const fixedKeys = [
  ...["proved", "due"].map((claim) => `claims.${claim}`),
  ...endings.flatMap((ending) => [`endings.${ending}.heading`, `endings.${ending}.body`]),
  ...["part.due", "until.tray", "until.cold", "worth", "worth-age", "guarantee"].map(
    (word) => `endings.${word}`,
  ),
  ...["ask", "options.unknown"].map((word) => `endings.age.${word}`),
  ...["options", "part", "work"].flatMap((word) =>
    ["young", "middle", "old"].map((age) => `endings.age.${word}.${age}`),
  ),
  ...["name", "ask", "how", "note"].map((word) => `endings.model.${word}`),
  ...["open-first", "open-again", "keep-closed", "until-part", "danger"].map(
    (word) => `endings.water.${word}`,
  ),
  ...preparations.flatMap((one) => [`endings.${one}.back`, `endings.${one}.danger`]),
  ...["not-sure", "cannot", "cannot-wait", "still-so", "changed"].map((id) => `standing.${id}`),
  ...["memory-only", "welcome-back", "wait-over", "wait-ended", "shortened", "offline"].map(
    (id) => `notices.${id}`,
  ),
  ...["other-tab", "tap-not-taken", "set-aside", "carried", "link-broken", "forgotten"].map(
    (id) => `notices.${id}`,
  ),
  ...["machine.ask", "machine.how", "machine.kept", "machine.shown", "go-on", "undo"].map(
    (id) => `resumed.${id}`,
  ),
  ...["fixed", "part", "professional", "yes", "now", "again", "no", "not-yet"].map((id) => `care.ask.${id}`),
  ...["thanks", "later", "title", "gate-open", "gate-shut", "forget"].map((id) => `care.${id}`),
  ...["use", "away", "return"].map((time) => `care.times.${time}`),
  ...["title", "due", "over", "unknown", "changed"].map((id) => `care.filter.${id}`),
  ...["open", "empty", "kept", "searches", "readings", "share", "copy"].map((id) => `care.machine.${id}`),
  ...["passes", "fails", "unclear"].map((verdict) => `findings.verdicts.${verdict}`),
  ...["flow", "temperature", "filter-age", "filter-age-one", "filter-age-open"].map((id) => `findings.${id}`),
  ...["share", "supply", "ice", "cubes", "seal", "litres", "litres-open"].map((id) => `findings.${id}`),
  ...["not-sure", "cannot", "over", "gate-ready", "model-none"].map((id) => `findings.${id}`),
];

/** Every text that this flow shows somewhere. */
export function expectedKeys(flow: Flow): ExpectedKeys {
  const checks = [flow.opening, ...Object.values(flow.checks)];
  const causes = Object.entries(flow.causes);
  const dangers = checks.flatMap(({ turns }) =>
    Object.values(turns).flatMap(({ answers = {} }) =>
      Object.keys(answers).filter((answer) => answers[answer]?.danger),
    ),
  );
  const tools = [...Object.values(flow.checks), ...Object.values(flow.parts)].flatMap((each) => each.tools);
  const scenarios = Object.values(flow.scenarios);
  const who = [
    ...causes.map(([, cause]) => cause.who),
    ...scenarios.map(({ otherwise }) => otherwise.who),
    "shop",
  ].filter((id) => id !== undefined);
  const turnTexts = checks.map(turnKeys);
  return {
    needed: [
      ...fixedKeys,
      ...turnTexts.flatMap(({ needed }) => needed),
      ...Object.entries(flow.gates).flatMap(([id, gate]) => gateKeys(`gates.${id}`, gate)),
      ...Object.keys(flow.hazards).map((id) => `hazards.${id}`),
      ...causes.map(([id]) => `causes.${id}.is`),
      ...causes.filter(([, cause]) => cause.remedy === "self").map(([id]) => `causes.${id}.fixed`),
      ...Object.keys(flow.parts).flatMap((id) => [`parts.${id}.name`, `parts.${id}.fitting`]),
      ...tools.map((id) => `tools.${id}`),
      ...Object.values(flow.regions).flatMap(({ statutes }) =>
        Object.values(statutes).map(({ says }) => `statutes.${says}`),
      ),
      ...(["use", "away", "return"] as const).flatMap((time) =>
        flow.care[time].map(({ id }) => `care.${time}.${id}`),
      ),
      ...flow.stations.order.map((id) => `stations.${id}`),
      ...[...dangers, "not-sure", "general"].flatMap((id) => [`dangers.${id}.heading`, `dangers.${id}.do`]),
      ...who.flatMap((id) => [`who.${id}.name`, `who.${id}.tell`]),
    ],
    allowed: [
      ...turnTexts.flatMap(({ allowed }) => allowed),
      ...causes.filter(([, cause]) => cause.remedy === "self").map(([id]) => `causes.${id}.ending`),
      ...causes.map(([id]) => `causes.${id}.until`),
      ...who.flatMap((id) => [`who.${id}.worth`, `who.${id}.worth-age`]),
    ],
  };
}

function turnKeys({ id, turns }: Flow["opening"]): ExpectedKeys {
  const needed = id === "opening" ? [] : [`checks.${id}.name`, `checks.${id}.why`];
  const allowed: string[] = [];
  for (const [name, turn] of Object.entries(turns)) {
    const key = `checks.${id}.${name}`;
    needed.push(`${key}.ask`, `${key}.how`);
    needed.push(...Object.keys(turn.answers ?? {}).map((answer) => `${key}.answers.${answer}`));
    needed.push(...(turn.inside ?? []).map(({ stage }) => `inside.${stage}`));
    needed.push(...Object.keys(turn.verdicts ?? {}).map((verdict) => `${key}.verdicts.${verdict}`));
    // The opening's turns have little in common, so each needs a name of its own; elsewhere the check's will do.
    (id === "opening" ? needed : allowed).push(`${key}.name`);
    allowed.push(`${key}.note`, `${key}.why`, `${key}.answers.not-sure`, `${key}.answers.cannot`);
  }
  return { needed, allowed };
}

function gateKeys(key: string, { items, facts, dangers = [] }: Flow["gates"][string]): string[] {
  return [
    ...["name", "ask", "why", "ready", "still", "cannot", ...dangers].map((word) => `${key}.${word}`),
    ...items.map((item) => `${key}.items.${item}`),
    ...facts.map((fact) => `${key}.facts.${fact}`),
  ];
}
