import type {
  Basket,
  BasketPart,
  BasketState,
  FoundModel,
  FoundPart,
  Plate,
  Services,
} from "../../../src/turn/index.ts";
import { createDraftOf } from "./draft.ts";

type Model = Extract<FoundModel, { kind: "exact" }>["model"];
type Part = Extract<FoundPart, { kind: "part" }>["part"];

const model = (code: string, machine = "fridge-freezer"): Model => ({
  code,
  key: code.replace(/\W/g, ""),
  brand: "Nordlicht",
  machine,
});

/** A candidate whose characters at these places differ from what was typed; none do where it is what was typed. */
const candidate = (code: string, differs: number[], machine?: string) => ({
  model: model(code, machine),
  marks: differs.length ? [...code].map((_, index) => differs.includes(index)) : [],
  asTyped: differs.length === 0,
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

const variants = ["V1", "V2"];
const numbered: Part = {
  ...filter,
  number: "NF-2301",
  replaces: ["NF-2207", "NF-2190"],
  picture: "/tests/panel/gallery/part.svg",
};

/** A shop whose filter depends on the variant, and for the second one on the serial number too. */
function fitBy(plate: Plate): FoundPart {
  const { variant } = plate;
  if (!variant) return { kind: "unread", about: "variant", choices: variants };
  if (variant === "V1") return { kind: "part", part: filter, alternatives: [] };
  return variant === "V2" ? fitBySerial(plate) : { kind: "no-part" };
}

/** A shop whose filter depends on the serial number, which has digits only. */
function fitBySerial({ serial }: Plate): FoundPart {
  if (!serial || !/^\d+$/.test(serial)) return { kind: "unread", about: "serial" };
  return { kind: "part", part: Number(serial) < 5000 ? numbered : cheaper, alternatives: [] };
}

const never = new Promise<never>(() => {});

/** A page's basket in which every part is `first`, and `answer` once it was asked for; `asked` is told of each request. */
export function createBasketOf(
  answer: BasketState,
  asked: (part: BasketPart) => void = () => {},
  first: BasketState = "new",
): Basket & { becomes(part: string, next: BasketState): void } {
  const states = new Map<string, BasketState>();
  const watchers = new Set<() => void>();
  const stateOf = ({ number }: BasketPart) => states.get(number) ?? first;
  const becomes = (part: string, next: BasketState) => {
    states.set(part, next);
    for (const watcher of watchers) watcher();
  };
  const send = (part: BasketPart) => {
    asked(part);
    becomes(part.number, answer);
  };
  return {
    becomes,
    stateOf,
    ask: (part) => ["new", "failed"].includes(stateOf(part)) && send(part),
    askAgain: (part) => stateOf(part) === "silent" && send(part),
    watch: (changed) => {
      watchers.add(changed);
      return () => watchers.delete(changed);
    },
  };
}

/** What the world around the panel answers in a fixture; the name says which answer. */
export function servicesFor(fixture: string): Services {
  const models: Record<string, FoundModel> = {
    "model-exact": { kind: "exact", typed: "wx40b8e", model: model("WX-40B8/E") },
    "model-near": {
      kind: "near",
      typed: "WX40BBE",
      candidates: [candidate("WX-40B8/E", [6]), candidate("WX-4088/E", [5, 6])],
      differing: ["water-filter", "inlet-valve"],
      more: 0,
    },
    "model-twin": {
      kind: "near",
      typed: "NTW 254NH/A0",
      candidates: [
        candidate("NTW 254NH/A0", [], "french-door"),
        candidate("NTW 254NH/AO", [11], "side-by-side"),
      ],
      differing: [],
      more: 0,
    },
    "model-more": {
      kind: "near",
      typed: "WXR1200",
      candidates: ["01", "02", "03"].map((end) => candidate(`WX-R1200/${end}`, [9, 10], "top-freezer")),
      differing: ["door-seal"],
      more: 4,
    },
    "model-long": { kind: "unreadable", problem: "too-long", typed: "W".repeat(300) },
  };
  const parts: Record<string, FoundPart> = {
    "part-out": { kind: "part", part: { ...filter, stock: "out-of-stock" }, alternatives: [] },
    "part-none": { kind: "no-part" },
    "part-picture": { kind: "part", part: numbered, alternatives: [cheaper] },
  };
  return {
    canLookUp: () => fixture !== "part-kind",
    takePageModel: () => null,
    words: async () => ({
      understand: () => [{ kind: "nothing" }],
      codesIn: () => [],
      said: () => null,
      aside: () => null,
    }),
    said: () => [],
    care: () => new Promise(() => {}),
    forget: () => {},
    carry: async () => ({ link: "https://shop.example/#fridgeside=x", code: [[true]], words: [] }),
    handover: async (of) => ({
      title: "1 March to 2 March",
      parts: [
        { heading: "Where it stands", lines: [of === "shown" ? "Is the bin full?" : "What the link holds"] },
      ],
    }),
    findModel: async (typed) => {
      if (fixture === "model-broken") throw new Error("no catalogue");
      if (fixture === "model-slow") return never;
      return models[fixture] ?? { kind: "unknown", typed };
    },
    showPhoto: async () => null,
    partFor: async (_code, _kind, plate = {}) => {
      if (fixture === "part-broken") throw new Error("no catalogue");
      if (fixture === "part-slow") return never;
      if (fixture.startsWith("part-variant")) return fitBy(plate);
      if (fixture.startsWith("part-serial")) return fitBySerial(plate);
      return parts[fixture] ?? { kind: "part", part: filter, alternatives: [cheaper] };
    },
    basket: createBasketOf(fixture === "part-failed" ? "failed" : "added"),
    draft: createDraftOf(),
    now: () => (fixture.startsWith("wait") ? "2025-06-20T13:40:00.000+01:00" : new Date().toISOString()),
    keepAwake: async () => () => {},
    signal: (kind) => console.log("signal", kind),
    live: null,
    shopHelp: { name: "the people at Winterhof Parts", link: "https://shop.example/help" },
    basketLink: "https://shop.example/basket",
  };
}
