import type { ChartConfig, FlowSlice, StateConfig } from "../../chart/index.ts";
import { type Compiled, compileFlow, inRegion, partsOfCheck } from "../../compile/index.ts";
import { careTimes, type Flow, limitOf, regionIn } from "../../guide/index.ts";
import type { KnownDangers, PackData } from "../../pack/index.ts";
import type { ScenarioData } from "../../session/index.ts";
import type { Resource } from "../../turn/index.ts";
import { type Ids, splitTexts } from "./split-texts.ts";

type Beside = { format: 2; resources: Record<string, Resource> };

/** What a panel fetches in one language: what every session starts with, and each scenario. */
export type PanelData = {
  start: Compiled["start"] & Beside;
  scenarios: (ScenarioData & Beside & { version: string })[];
};

/** The data of every language with texts, by tag. */
export function createPanelData(flow: Flow, locales: Record<string, Resource>): Record<string, PanelData> {
  const compiled = compileFlow(flow);
  const { start, scenarios } = compiled;
  const calls = scenarios.map(({ chart, flow: slice }) => idsIn(chart, slice));
  return mapTexts(locales, (tag, { photo: _, live = {}, care = {}, ...texts }) => {
    const split = splitTexts(
      forPhones({ ...texts, live: whatAsks(live), care: whatOpens(care) }),
      idsIn(start.chart, start.flow),
      calls,
    );
    const beside = (resource: Resource): Beside => ({ format: 2, resources: { [tag]: resource } });
    return {
      start: { ...inRegion(compiled, regionIn(flow.regions, tag)).start, ...beside(split.shared) },
      scenarios: scenarios.map((scenario, place) => ({
        ...scenario,
        version: flow.version,
        ...beside(split.own[place] ?? {}),
      })),
    };
  });
}

/** What stands beside a photo of the plate: it comes with the code that reads one. */
export function plateTextsOf(locales: Record<string, Resource>): Record<string, Resource> {
  return mapTexts(locales, (_, { photo = {} }) => ({ photo }));
}

/** The texts of the desk, which come with its script. */
export function deskTextsOf(locales: Record<string, Resource>): Record<string, Resource> {
  return mapTexts(locales, (_, { desk = {} }) => ({ desk }));
}

/** What is said while the shop's people help: it comes with the code for that. What asks for them is there before. */
export function liveTextsOf(locales: Record<string, Resource>): Record<string, Resource> {
  return mapTexts(locales, (_, { live = {} }) => ({ live }));
}

/** What is said after an ending: it comes with the code for that, and with the lines of the gates before its steps. */
export function careTextsOf({ care }: Flow, locales: Record<string, Resource>): Record<string, Resource> {
  const needed = careTimes.flatMap((time) => care[time].flatMap(({ gate }) => gate ?? []));
  return mapTexts(locales, (_, texts) => ({
    care: texts.care ?? {},
    gates: Object.fromEntries(
      Object.entries(texts.gates ?? {}).filter(([gate]) => needed.includes(gate)),
    ) as Resource,
  }));
}

/** Of what comes with the code for it, only what the menu has before that is there. */
const whatOpens = (care: Resource | string): Resource => {
  const { machine = {}, forget = "" } = care as Resource;
  return { machine: { open: (machine as Resource).open ?? "" }, forget };
};

const whatAsks = (live: Resource | string): Resource =>
  Object.fromEntries(Object.entries(live).filter(([key]) => key === "get"));

/** A flow as packs of every language, each whole in one file. @param madeFor the version of Fridgeside */
export function createPackData(
  flow: Flow,
  locales: Record<string, Resource>,
  madeFor: string,
): Record<string, PackData> {
  const compiled = compileFlow(flow);
  const places = placesOf(flow);
  return mapTexts(locales, (tag, texts) => ({
    format: 2,
    madeFor,
    ...inRegion(compiled, regionIn(flow.regions, tag)),
    places,
    resources: { [tag]: forPhones(texts) },
  }));
}

/** What is dangerous where. */
export function knownDangers({ hazards, access, stations, limits }: Flow): KnownDangers {
  const gates = Object.entries(hazards).map(([id, { gate }]) => [id, { gate }]);
  const gateMinutes = limitOf(limits, "gate-short-minutes");
  return { hazards: Object.fromEntries(gates), access, stations: stations.access, gateMinutes };
}

/** Where the hands go, by the part of a check that lies behind the same gates. */
export function placesOf(flow: Flow): PackData["places"] {
  const parts = Object.values(flow.checks).flatMap((check) =>
    partsOfCheck(check).map(({ id, access }) => [id, { station: check.station, access }] as const),
  );
  return Object.fromEntries(parts);
}

/** Something of every language's texts. The first language is the one that others lean on. */
export function mapTexts<To>(
  locales: Record<string, Resource>,
  to: (tag: string, texts: Resource) => To,
): Record<string, To> {
  return Object.fromEntries(
    languagesOf(locales).map((tag) => {
      const texts = withFallback(locales["en-GB"] ?? {}, locales[tag] ?? {});
      return [tag, to(tag, texts)];
    }),
  );
}

/** The languages with texts; the first is the one that others lean on. */
export function languagesOf(locales: Record<string, Resource>): string[] {
  return ["en-GB", ...Object.keys(locales).filter((tag) => tag !== "en-GB")];
}

/** A language's texts, with those of the other where it has none of its own: a phone fetches one set. */
export function withFallback(fallback: Resource, own: Resource): Resource {
  const merged = Object.entries(fallback).map(([key, text]) => {
    const mine = own[key];
    if (typeof text === "string" || typeof mine === "string") return [key, mine ?? text];
    return [key, withFallback(text, mine ?? {})];
  });
  return { ...own, ...Object.fromEntries(merged) };
}

/**
 * Texts without the words of drawings, which lie with them, without what comes with the understanding of sentences, and
 * without those of the desk.
 */
function forPhones({ pictures: _, asides: __, desk: ___, ...texts }: Resource): Resource {
  return texts;
}

function* statesIn(states: Record<string, StateConfig>): Generator<StateConfig> {
  for (const state of Object.values(states)) {
    yield state;
    yield* statesIn(state.states ?? {});
  }
}

/** The ids that texts are called by, by the first part of their keys. */
function idsIn(
  { states }: ChartConfig,
  slice: Pick<FlowSlice, "gates" | "hazards" | "causes" | "parts">,
): Ids {
  const all = [...statesIn(states)];
  const metas = all.flatMap(({ meta }) => meta ?? []);
  const whos = all.flatMap(({ on = {}, always = [] }) =>
    [...always, ...Object.values(on).flat()].flatMap(({ actions = [] }) =>
      actions.flatMap(({ params }) => params.who ?? []),
    ),
  );
  return {
    checks: new Set(metas.map(({ turn }) => turn.split(".")[0] ?? "")),
    causes: new Set(Object.keys(slice.causes)),
    gates: new Set(Object.keys(slice.gates)),
    hazards: new Set(Object.keys(slice.hazards)),
    parts: new Set(Object.keys(slice.parts)),
    who: new Set([...whos, ...Object.values(slice.causes).flatMap(({ who }) => who ?? [])]),
    tools: new Set([
      ...metas.flatMap(({ tools = [] }) => tools),
      ...Object.values(slice.parts).flatMap(({ tools }) => tools),
    ]),
    inside: new Set(metas.flatMap(({ inside = [] }) => inside.map(({ stage }) => stage))),
  };
}
