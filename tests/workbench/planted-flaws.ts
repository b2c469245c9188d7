import { type Fault, inEnglish, newCheck } from "./planted.ts";

const scenario = "scenarios/no-ice.yaml";

/** Flaws of the flow itself: all names are right, and yet it does not hold. */
export const flaws: Fault[] = [
  [
    "a part kind that has no entry",
    "part-without-entry",
    "has no entry in parts.yaml",
    { file: "causes.yaml", find: "part: supply-line", put: "part: ¦supply-lines" },
  ],
  [
    "a cause that ends with a part and names none",
    "part-without-entry",
    "ends with a part but names none",
    { file: "causes.yaml", find: "  part: supply-line\n", put: "" },
    { file: "causes.yaml", find: "line-damaged:\n", put: "¦line-damaged:\n" },
  ],
  [
    "a part kind that the catalogue does not have",
    "part-without-catalogue-entry",
    'no part of the kind "my-part"',
    {
      file: "parts.yaml",
      find: "",
      put: "¦my-part: { minutes: 5, tools: [], access: inside, fitting: self }\n",
    },
    ...inEnglish("parts", "my-part: { name: A part, fitting: Fit it. }\n"),
  ],
  [
    "an ending without a proof",
    "cause-without-proof",
    '"too-full", which has no proof',
    { file: scenario, find: "proofs:\n", put: "proofs:\n  - ¦too-full\n" },
  ],
  [
    "a turn that nothing leads to",
    "unreachable",
    'Nothing leads to turn "rearrange" of check "too-full"',
    { file: "checks/too-full.yaml", find: "to: rearrange", put: "to: uncover" },
    { file: "checks/too-full.yaml", find: "  rearrange:\n", put: "  ¦rearrange:\n" },
  ],
  [
    "a scenario that an earlier one takes all from",
    "unreachable",
    'No answers of the opening lead to scenario "zz-last"',
    {
      file: "scenarios/zz-last.yaml",
      find: "",
      put: "id: zz-last\n¦when: { answered: { turn: opening.danger, is: [gas] } }\ncomplaint: no-ice\nproofs: []\nchecks: []\notherwise: { to: professional, who: engineer }\n",
    },
  ],
  [
    "a check whose condition cannot come about",
    "unreachable",
    'so the check "filter-age" is never asked here',
    {
      file: scenario,
      find: "- check: filter-age\n",
      put: "- check: filter-age\n    ¦when: { remedied: [line-damaged] }\n",
    },
  ],
  [
    "a turn that takes no answer",
    "dead-end",
    'From turn "stand" of check "too-full" no answer leads on',
    { file: "checks/too-full.yaml", find: "room: { to: done", put: "room: { to: stand" },
    {
      file: "checks/too-full.yaml",
      find: "  rearrange:\n",
      put: "  ¦stand: { answers: {}, not-sure: false, cannot: false }\n  rearrange:\n",
    },
    ...inEnglish("checks/too-full", "stand: { ask: Well?, how: Stand. }\n"),
  ],
  [
    "two turns that lead only to each other",
    "loop-without-exit",
    'The turns "again", "rearrange"',
    {
      file: "checks/too-full.yaml",
      find: "  rearrange:\n",
      put: "  ¦again: { answers: { full: { to: rearrange } }, not-sure: false, cannot: false }\n  rearrange:\n",
    },
    {
      file: "checks/too-full.yaml",
      find: "rearranged: { to: done, remedies: too-full }\n",
      put: "rearranged: { to: again, remedies: too-full }\n    not-sure: false\n    cannot: false\n",
    },
    ...inEnglish("checks/too-full", "again: { ask: Again?, how: Look., answers: { full: Full } }\n"),
  ],
  [
    "a check that comes again for ever",
    "loop-without-exit",
    'Check "my-check" repeats',
    { file: scenario, find: "- check: filter-age\n", put: "- check: filter-age\n  - ¦check: my-check\n" },
    ...newCheck("id: my-check\nrepeats: true", "finds: too-full"),
  ],
  [
    "a check that loses its gate",
    "ungated-hazard",
    '"mains-electricity"',
    { file: "checks/fill-tube.yaml", find: "gates: [back-panel]\n", put: "" },
    { file: "checks/fill-tube.yaml", find: "access: back-panel", put: "¦access: back-panel" },
  ],
  [
    "one of two gates that is taken away",
    "ungated-hazard",
    '"heavy-appliance"',
    {
      file: "checks/supply-line.yaml",
      find: "gates: [water-supply, pulled-out]",
      put: "¦gates: [water-supply]",
    },
  ],
  [
    "a check behind the panel that claims to be inside",
    "undeclared-hazard",
    '"mains-electricity"',
    {
      file: "checks/fill-tube.yaml",
      find: "access: back-panel\ngates: [back-panel]",
      put: "access: ¦inside",
    },
  ],
  [
    "a search that can end as fixed with the tap closed by us",
    "left-changed",
    '"no-ice/ice-yield/plan" leads to "fixed" while the water is not put back',
    { file: "checks/ice-yield.yaml", find: "    needs: { water: open, plug: in }\n", put: "" },
    { file: "checks/ice-yield.yaml", find: "  plan:\n", put: "  ¦plan:\n" },
  ],
  [
    "an answer that leaves the tap nobody knows how, so that it is asked about for ever",
    "left-unsettled",
    'check "tap-reopen" does not say how it leaves the water',
    {
      file: "checks/tap-reopen.yaml",
      find: "opened: { to: done, leaves: { water: open } }",
      put: "opened: { to: done }",
    },
    { file: "checks/tap-reopen.yaml", find: "restores: [water]", put: "¦restores: [water]" },
  ],
  [
    "a gate that no longer has the plug pulled before a hand goes where it must be out",
    "wrong-state",
    "needs the plug to be out",
    { file: "gates.yaml", find: "leaves: { water: closed, plug: out }", put: "leaves: { water: closed }" },
    { file: "checks/fill-tube.yaml", find: "  thaw:\n", put: "  ¦thaw:\n" },
  ],
  [
    "an opening that marks no danger",
    "no-way-out",
    "is marked as a danger",
    { file: "opening.yaml", find: "turns:\n", put: "¦turns:\n" },
    ...["burning", "sparks", "water-near-socket", "gas", "shock"].map((id) => ({
      file: "opening.yaml",
      find: `${id}: { to: stopped, danger: true }`,
      put: `${id}: { to: stopped }`,
    })),
  ],
  [
    "a proof that no check of the scenario can come to",
    "unprovable-cause",
    'can prove the cause "my-cause"',
    {
      file: "causes.yaml",
      find: "",
      put: "my-cause: { station: cold, remedy: professional, who: engineer, proof: { answered: { turn: tap-reopen.open, is: [opened] } } }\n",
    },
    { file: scenario, find: "proofs:\n", put: "proofs:\n  - ¦my-cause\n" },
    ...inEnglish("causes", "my-cause: { is: It is so }\n"),
  ],
  [
    "a state of chance nothing",
    "spread-of-nothing",
    "No state here has a chance",
    {
      file: "machine/causes/all.yaml",
      find: "does: { ice: { little: 1 } }",
      put: "does: { ¦ice: { little: 0 } }",
    },
  ],
  [
    "a cause that no check can settle",
    "unsettled-cause",
    'can prove the cause "my-cause"',
    { file: "causes.yaml", find: "", put: "¦my-cause: { station: cold, remedy: self }\n" },
    {
      file: "machine/causes/all.yaml",
      find: "",
      put: "my-cause: { share: 9, reason: for this test, does: { ice: { none: 1 } } }\n",
    },
    ...inEnglish("causes", "my-cause: { is: It is so, fixed: It was so }\n"),
  ],
  [
    "a cause of no scenario",
    "unused-cause",
    'Cause "my-cause" belongs to no scenario',
    { file: "causes.yaml", find: "", put: "¦my-cause: { station: cold, remedy: self }\n" },
    ...inEnglish("causes", "my-cause: { is: It is so, fixed: It was so }\n"),
  ],
  [
    "a part that is sold without a proof",
    "part-without-proof",
    'Cause "filter-leaks" ends with a part but has no proof',
    {
      file: "causes.yaml",
      find: "filter-leaks: { station: filter, remedy: professional, who: plumber, keeps: { water: closed } }",
      put: "¦filter-leaks: { station: filter, remedy: part, part: water-filter, keeps: { water: closed } }",
    },
  ],
  [
    "a part proof that one may pass without the decisive finding",
    "part-without-decisive-check",
    'The proof of cause "line-damaged"',
    {
      file: "causes.yaml",
      find: "  proof: { answered: { turn: supply-line.look, is: [damaged] } }",
      put: "  ¦proof: { any: [{ answered: { turn: supply-line.look, is: [damaged] } }, { answered: { turn: too-full.look, is: [room] } }] }",
    },
  ],
  [
    "a check that no cause needs",
    "unneeded-check",
    'needs the check "my-check"',
    { file: scenario, find: "- check: filter-age\n", put: "- check: filter-age\n  - ¦check: my-check\n" },
    ...newCheck("id: my-check"),
  ],
  [
    "a check that no scenario asks",
    "unused-check",
    'No scenario asks the check "my-check"',
    ...newCheck("id: ¦my-check"),
  ],
  [
    "a text that every language lacks",
    "missing-text",
    'no text "checks.filter-age.fitted.verdicts.unclear" in en-GB, en-US',
    { file: "checks/filter-age.yaml", find: "unclear: { to: done }", put: "¦unclear: { to: done }" },
    { file: "locales/en-GB/checks/filter-age.yaml", find: "unclear:", put: "unclearly:" },
  ],
  [
    "a limit that an instrument needs",
    "missing-limit",
    'no limit "stopwatch"',
    { file: "limits.yaml", find: "stopwatch:\n", put: "stop-watch:\n" },
  ],
];
