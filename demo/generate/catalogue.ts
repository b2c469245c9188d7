import { codeDistance, editCosts, normaliseCode } from "../../src/catalogue/index.ts";

/**
 * The demo shop's feed, all of our own invention: shop, makers, codes, prices. Larder Lane Spares sells
 * parts for six makers that do not exist; its codes are styled like plates are, with look-alike twins.
 */
export type DemoCatalogue = {
  shop: string;
  models: { code: string; brand: string; machine: string }[];
  parts: DemoPart[];
};
type DemoPart = {
  number: string;
  kind: string;
  name: string;
  price: { minor: number; currency: string };
  stock: string;
  origin: string;
  link: string;
  fits: string[];
};

/** The seed of the committed demo/catalogue.json. */
export const demoSeed = 418;

type Series = { brand: string; machine: string; pattern: string; twin?: [string, string] };

// # is any digit, @ any letter of a code. A twin repeats each code with the second ending for the first.
const modelsPerSeries = 6;
const letters = "ACEFHKMNPRTUVWXY";
const series: Series[] = [
  { brand: "Wexmarrow", machine: "french-door", pattern: "WXM 4##@B8/1", twin: ["B8/1", "88/1"] },
  { brand: "Wexmarrow", machine: "french-door", pattern: "WXM 7##@/EK" },
  { brand: "Wexmarrow", machine: "bottom-freezer", pattern: "WXC 3##@-B" },
  { brand: "Tarnhoxby", machine: "side-by-side", pattern: "TBY-5##-S1.@", twin: ["S1", "SI"] },
  { brand: "Tarnhoxby", machine: "side-by-side", pattern: "TBY-7##-K4.@" },
  { brand: "Brindlequay", machine: "bottom-freezer", pattern: "BLQ2##N@/A0", twin: ["A0", "AO"] },
  { brand: "Brindlequay", machine: "bottom-freezer", pattern: "BLQ3##N@/A7W" },
  { brand: "Ullamere", machine: "top-freezer", pattern: "UM4#-TF@5" },
  { brand: "Ullamere", machine: "top-freezer", pattern: "UM8#-TX@5.2" },
  { brand: "Ostrathe", machine: "side-by-side", pattern: "O4@#/##LS-EU" },
  { brand: "Ostrathe", machine: "french-door", pattern: "O6@#/##FD-EU" },
  { brand: "Pellwisk", machine: "tank-fed", pattern: "PK.T2#@-2" },
  { brand: "Pellwisk", machine: "tank-fed", pattern: "PK.T4#@-4W" },
];

// A part fits one series, one maker or every machine; only a machine on the water supply has the plumbed ones, and
// only one with a tank has the tank's.
export type KindOfPart = { kind: string; noun: string; pence: number; per: "series" | "brand" | "all" };
/** What the demo shop sells, with the usual price of each. */
export const kinds: KindOfPart[] = [
  { kind: "water-filter", noun: "Water filter", pence: 3299, per: "brand" },
  { kind: "inlet-valve", noun: "Inlet valve", pence: 4449, per: "brand" },
  { kind: "ice-maker", noun: "Ice maker", pence: 11_999, per: "series" },
  { kind: "door-seal", noun: "Freezer door seal", pence: 5699, per: "series" },
  { kind: "ice-bin", noun: "Ice bin", pence: 3849, per: "series" },
  { kind: "supply-line", noun: "Supply line, 3 m,", pence: 1549, per: "all" },
  { kind: "fill-tube", noun: "Fill tube", pence: 1249, per: "brand" },
  { kind: "bin-sensor", noun: "Bin-full sensor", pence: 2199, per: "brand" },
  { kind: "water-tank", noun: "Water tank", pence: 2749, per: "brand" },
  { kind: "tank-pump", noun: "Tank pump", pence: 3649, per: "series" },
  { kind: "dispenser-flap", noun: "Dispenser flap", pence: 1849, per: "brand" },
  { kind: "door-switch", noun: "Door switch", pence: 949, per: "brand" },
];
export const plumbed = ["water-filter", "inlet-valve", "supply-line", "fill-tube"];
export const tankFed = ["water-tank", "tank-pump"];
const copied = ["water-filter", "inlet-valve"];

/** Repeatable chance: a linear congruential generator with the constants of Numerical Recipes. */
function createChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const keyOf = (code: string) => {
  const read = normaliseCode(code);
  return read.kind === "code" ? read.code : "";
};

/** Makes the demo shop's feed; the same seed always gives the same one. */
export function createDemoCatalogue(seed: number): DemoCatalogue {
  const chance = createChance(seed);
  const pick = <T>(from: readonly T[] | string) => from[Math.floor(chance() * from.length)] as T;
  const models: (DemoCatalogue["models"][number] & { series: string })[] = [];
  const parts: DemoPart[] = [];

  /** Twins apart, codes keep a full edit apart, so that no single misreading turns one into another. */
  function inventCode(pattern: string): string {
    const code = pattern.replace(/[#@]/g, (place) => pick<string>(place === "#" ? "0123456789" : letters));
    const isClear = models.every((model) => codeDistance(keyOf(code), keyOf(model.code)) >= editCosts.other);
    return isClear ? code : inventCode(pattern);
  }

  for (const { brand, machine, pattern, twin } of series) {
    const name = `${brand} ${pattern.split(/[#@]/)[0]}`;
    for (let made = 0; made < modelsPerSeries; made += twin ? 2 : 1) {
      const code = inventCode(pattern);
      models.push({ code, brand, machine, series: `${name} series` });
      // Twins take different parts: choosing the wrong one must cost something in the demo too.
      if (twin) {
        models.push({ code: code.replace(...twin), brand, machine, series: `${name} (${twin[1]}) series` });
      }
    }
  }

  function addPart({ kind, noun, pence }: KindOfPart, fitting: string, fits: string[], origin: string) {
    const number = `LLS-${10_001 + parts.length}`;
    const usual = origin === "compatible" ? pence * 0.7 : pence;
    parts.push({
      number,
      kind,
      name: `${noun} for ${fitting}${origin === "compatible" ? " (compatible)" : ""}`,
      // Within 15% of the usual price, ending in 9.
      price: { minor: Math.round((usual * (0.85 + 0.3 * chance())) / 10) * 10 - 1, currency: "GBP" },
      stock: pick(["in-stock", "in-stock", "in-stock", "few", "out-of-stock"]),
      origin,
      link: `https://larder-lane.example/parts/${number.toLowerCase()}`,
      fits,
    });
  }

  for (const kind of kinds) {
    const groups = new Map<string, string[]>();
    for (const model of models) {
      const foreign = model.machine === "tank-fed" ? plumbed : tankFed;
      if (foreign.includes(kind.kind)) continue;
      const group = { series: model.series, brand: model.brand, all: "all plumbed machines" }[kind.per];
      groups.set(group, [...(groups.get(group) ?? []), model.code]);
    }
    for (const [group, codes] of groups) {
      // No shop has everything: every third group, one model goes without.
      const fits = chance() < 1 / 3 ? codes.slice(0, -1) : codes;
      addPart(kind, group, fits, kind.per === "all" ? "compatible" : "original");
      if (copied.includes(kind.kind)) addPart(kind, group, fits, "compatible");
    }
  }
  return { shop: "Larder Lane Spares", models: models.map(({ series: _, ...model }) => model), parts };
}

/** The feed as JSON text with one row a line, so that a change in it can be read. */
export function writeDemoCatalogue({ shop, models, parts }: DemoCatalogue): string {
  const lines = (rows: object[]) => rows.map((row) => `    ${JSON.stringify(row)}`).join(",\n");
  return `{
  "shop": ${JSON.stringify(shop)},
  "models": [
${lines(models)}
  ],
  "parts": [
${lines(parts)}
  ]
}
`;
}
