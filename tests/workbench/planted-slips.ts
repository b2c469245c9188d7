import type { Fault } from "./planted.ts";

const scenario = "scenarios/no-ice.yaml";

/** Slips of the hand: YAML, shape, and names that nothing has. */
export const slips: Fault[] = [
  [
    "a bracket that is never closed",
    "yaml-syntax",
    "Not readable as YAML",
    { file: "checks/filter-age.yaml", find: "tools: []", put: "tools: [¦}" },
  ],
  [
    "a key that stands twice",
    "doubled-key",
    "stands here twice",
    { file: "checks/filter-age.yaml", find: "tools: []", put: "tools: []\n¦minutes: 3" },
  ],
  [
    "a file that no flow has",
    "unknown-file",
    'Did you mean "gates.yaml"?',
    { file: "gate.yaml", find: "", put: "¦hazards: {}\n" },
  ],
  [
    "a check whose file has another name",
    "id-and-file-differ",
    'named "filter-age" but holds the check "filter-years"',
    { file: "checks/filter-age.yaml", find: "id: filter-age", put: "id: ¦filter-years" },
  ],
  [
    "a key that nobody knows",
    "unknown-key",
    'Did you mean "picture"?',
    { file: "checks/filter-age.yaml", find: "picture: filter-date", put: "¦pictur: filter-date" },
  ],
  [
    "a misspelt key that must be there",
    "unknown-key",
    'Did you mean "station"?',
    { file: "checks/filter-age.yaml", find: "station: filter", put: "¦statoin: filter" },
  ],
  [
    "a key that is missing",
    "missing-key",
    '"minutes" is missing',
    { file: "checks/filter-age.yaml", find: "minutes: 1\n", put: "" },
    { file: "checks/filter-age.yaml", find: "id: filter-age", put: "¦id: filter-age" },
  ],
  [
    "a word where a number belongs",
    "wrong-value",
    '"minutes": Invalid input: expected number',
    { file: "checks/filter-age.yaml", find: "minutes: 1\n", put: "minutes: ¦two\n" },
  ],
  [
    "a word outside its list",
    "wrong-value",
    'Did you mean "reading"?',
    { file: "checks/filter-age.yaml", find: "kind: reading", put: "kind: ¦redaing" },
  ],
  [
    "an unknown word of the vocabulary",
    "unknown-key",
    'Did you mean "answered"?',
    {
      file: "conditions.yaml",
      find: "",
      put: "my-rule: { ¦anwsered: { turn: too-full.look, is: [room] } }\n",
    },
  ],
  [
    "a likelihood that is certain",
    "wrong-value",
    "between 0 and 1",
    { file: "words.yaml", find: "always: 0.97", put: "always: ¦1" },
  ],
  [
    "a limit without a source",
    "limit-without-source",
    'Limit "my-limit" has no source',
    { file: "limits.yaml", find: "", put: "¦my-limit: { value: 1, unit: s, confidence: J }\n" },
  ],
  [
    "a limit with an empty source",
    "limit-without-source",
    'Limit "my-limit" has no source',
    { file: "limits.yaml", find: "", put: 'my-limit: { value: 1, unit: s, confidence: J, source: ¦"" }\n' },
  ],
  [
    "an answer that leads nowhere",
    "unknown-target",
    'goes to "rearange", which does not exist. Did you mean "rearrange"?',
    { file: "checks/too-full.yaml", find: "to: rearrange", put: "to: ¦rearange" },
  ],
  [
    "a wait that is followed by nothing",
    "unknown-target",
    'goes to "cme"',
    { file: "checks/last-wait.yaml", find: "then: came", put: "then: ¦cme" },
  ],
  [
    "a start that does not exist",
    "unknown-turn",
    'starts with "lok"',
    { file: "checks/too-full.yaml", find: "start: look", put: "start: ¦lok" },
  ],
  [
    "an answer that finds a cause nobody knows",
    "unknown-cause",
    'Did you mean "vents-blocked"?',
    { file: "checks/too-full.yaml", find: "finds: vents-blocked", put: "finds: ¦vents-blokced" },
  ],
  [
    "a prior for a cause nobody knows",
    "unknown-cause",
    'knows the cause "gremlins"',
    { file: scenario, find: "priors:\n", put: "priors:\n  ¦gremlins: rare\n" },
  ],
  [
    "a scenario that asks a check that does not exist",
    "unknown-check",
    'Did you mean "filter-age"?',
    { file: scenario, find: "check: filter-age", put: "check: ¦filter-agee" },
  ],
  [
    "a proof that rests on a turn that does not exist",
    "unknown-turn",
    'Did you mean "supply-line.look"?',
    {
      file: "causes.yaml",
      find: "proof: { answered: { turn: supply-line.look",
      put: "proof: { answered: { turn: ¦supply-line.loook",
    },
  ],
  [
    "a proof that rests on an answer that does not exist",
    "unknown-answer",
    'Did you mean "damaged"?',
    { file: "causes.yaml", find: "is: [damaged]", put: "is: [¦damagd]" },
  ],
  [
    "a condition that does not exist",
    "unknown-condition",
    'Did you mean "roomy"?',
    { file: scenario, find: "{ is: roomy }", put: "{ is: ¦rooomy }" },
  ],
  [
    "a condition that means itself",
    "endless-condition",
    'Condition "my-rule" means itself',
    { file: "conditions.yaml", find: "", put: "¦my-rule: { not: { is: my-rule } }\n" },
  ],
  [
    "a gate that does not exist",
    "unknown-gate",
    'Did you mean "back-panel"?',
    { file: "checks/fill-tube.yaml", find: "gates: [back-panel]", put: "gates: [¦back-pannel]" },
  ],
  [
    "a hazard that nobody described",
    "unknown-hazard",
    'exposes to "hot-glue"',
    {
      file: "checks/ice-yield.yaml",
      find: "hazards: [moving-tray]",
      put: "hazards: [moving-tray, ¦hot-glue]",
    },
  ],
  [
    "an access that does not exist",
    "unknown-access",
    'Did you mean "inside"?',
    { file: "checks/too-full.yaml", find: "access: inside", put: "access: ¦insde" },
  ],
  [
    "a station that does not exist",
    "unknown-station",
    'clears "colt"',
    { file: "checks/too-full.yaml", find: "clears: [cold]", put: "clears: [¦colt]" },
  ],
  [
    "a wait that lasts a limit nobody set",
    "unknown-limit",
    'Did you mean "ice-return-hours"?',
    { file: "checks/last-wait.yaml", find: "lasts: ice-return-hours", put: "lasts: ¦ice-return-hour" },
  ],
  [
    "a likelihood outside the words",
    "unknown-word",
    "is no word for a likelihood",
    { file: "checks/control-lock.yaml", find: "control-locked: always", put: "control-locked: ¦alwyas" },
  ],
  [
    "a prior outside the words",
    "unknown-word",
    "is no word for a prior",
    { file: scenario, find: "too-full: common", put: "too-full: ¦comon" },
  ],
  [
    "an outcome that comes from no answer",
    "unknown-finding",
    'Did you mean "look.lock-on"?',
    { file: "checks/control-lock.yaml", find: "from: [look.lock-on]", put: "from: [¦look.lock-onn]" },
  ],
  [
    "an answer counted in two outcomes",
    "finding-told-twice",
    'outcome "lock-on" counts already',
    {
      file: "checks/control-lock.yaml",
      find: "from: [look.lock-off, look.no-lock]",
      put: "from: [look.lock-off, look.no-lock, ¦look.lock-on]",
    },
  ],
  [
    "an outcome that leaves causes out",
    "missing-key",
    'has no "otherwise"',
    {
      file: "checks/control-lock.yaml",
      find: "says: { control-locked: always, otherwise: rarely }",
      put: "¦says: { control-locked: always }",
    },
  ],
];
