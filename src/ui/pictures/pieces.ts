/** What several pictures share, drawn once around its own origin. */
export const pieces: Record<string, string[]> = {
  cube: ["iR0 0 9 9"],
  ok: ["aM0 0l3 3 6-7"],
  bad: ["sM-3-10h6l-1 9h-4zM-2 2h4v4h-4z"],
  watch: ["fM-11 0a11 11 0 1 1 0 .1M-2-14h4M0-14v3", "aM0 0v-6M0 0l4 2"],
  fridge: ["fR0 0 34 60", "kM0 36h34M29 26v6M29 40v6"],
  maker: ["kM-42 0h148", "fR0 0 64 18", "dM6 6h12M6 11h12"],
  person: ["fM-5-10a5 5 0 1 1 0 .1M-9 18v-10a9 9 0 0 1 18 0v10"],
  flake: ["kM0-6v12M-5-3l10 6M5-3l-10 6"],
  tap: ["fR-14 -8 28 16", "fM-3-8v-16h6v16", "fR-18 -30 36 6"],
};
