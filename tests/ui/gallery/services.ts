import type { FittedPart, FoundModel, Services } from "../../../src/session/index.ts";

type Model = Extract<FoundModel, { kind: "exact" }>["model"];
type Part = Extract<FittedPart, { kind: "part" }>["part"];

const model = (code: string): Model => ({
  code,
  key: code.replace(/\W/g, ""),
  brand: "Nordlicht",
  machine: "fridge-freezer",
});

const filter: Part = {
  number: "NF-2207",
  kind: "water-filter",
  name: "Water filter cartridge, quarter turn, with seal ring",
  price: { minor: 3490, currency: "GBP" },
  stock: "in-stock",
  link: "https://shop.example/nf-2207",
  fits: ["WX-40B8/E"],
  origin: "original",
  effortMinutes: 4,
};

const cheaper: Part = {
  number: "CF-118",
  kind: "water-filter",
  name: "Filter cartridge CF-118",
  price: { minor: 1850, currency: "GBP" },
  stock: "few",
  fits: ["WX-40B8/E"],
  origin: "compatible",
};

const never = new Promise<never>(() => {});

/** What the world around the panel answers in a fixture; the name says which answer. */
export function servicesFor(fixture: string): Services {
  const models: Record<string, FoundModel> = {
    "model-exact": { kind: "exact", typed: "wx40b8e", model: model("WX-40B8/E") },
    "model-near": {
      kind: "near",
      typed: "WX40BBE",
      candidates: [
        { model: model("WX-40B8/E"), marks: [..."WX-40B8/E"].map((_, index) => index === 6) },
        { model: model("WX-4088/E"), marks: [..."WX-4088/E"].map((_, index) => index === 5 || index === 6) },
      ],
    },
    "model-long": { kind: "unreadable", problem: "too-long", typed: "W".repeat(300) },
  };
  const parts: Record<string, FittedPart> = {
    "part-out": { kind: "part", part: { ...filter, stock: "out-of-stock" }, alternatives: [] },
    "part-none": { kind: "no-part" },
  };
  return {
    findModel: async (typed) => {
      if (fixture === "model-broken") throw new Error("no catalogue");
      if (fixture === "model-slow") return never;
      return models[fixture] ?? { kind: "unknown", typed };
    },
    partFor: async () => {
      if (fixture === "part-broken") throw new Error("no catalogue");
      if (fixture === "part-slow") return never;
      return parts[fixture] ?? { kind: "part", part: filter, alternatives: [cheaper] };
    },
    addToBasket: async () => {
      if (fixture === "part-failed") throw new Error("refused");
    },
    now: () => (fixture.startsWith("wait") ? "2025-06-20T13:40:00.000+01:00" : new Date().toISOString()),
    keepAwake: async () => () => {},
    signal: (kind) => console.log("signal", kind),
    shopHelp: { name: "the people at Winterhof Parts", link: "https://shop.example/help" },
  };
}
