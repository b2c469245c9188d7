import type { ChartConfig, StateConfig, Transition } from "../../chart/index.ts";
import { compileGuard } from "./scxml-guards.ts";
import { compileNote, memory } from "./scxml-notes.ts";
import { element } from "./xml.ts";

/** How events are to be sent to the document, for whoever runs it; part of the document itself. */
const readMe = `
  Events carry data: "at", the instant as RFC 3339, always; "measured" also the "instrument", the
  "verdict" (passes, fails, unclear or one of the instrument's own), decided before it is sent, so that no arithmetic of
  readings is needed here, and the "place" (freezer, fridge or ice-maker) of a temperature, null for any other instrument;
  "model-given" also the "code" or null. Each carries too the "advice" for what it leads to: the "check" that is best
  next and the cause whose "part" is, each a name or null, whether the ending for today is best ("later"), and where somebody
  is called, whom ("call", with "who"). Advice chooses among what is allowed and never allows. State names are those of the flow with "." for "/".
`;

/**
 * The chart as a W3C SCXML 1.0 document (https://www.w3.org/TR/scxml/) with the ECMAScript data model: the same
 * states, transitions, conditions and memory. What marks the ice path for the eye is left out: it decides nothing.
 * @throws Error for a guard outside the vocabulary
 */
export function writeScxml(config: ChartConfig, name: string): string {
  const data = Object.entries(memory).map(([id, expr]) => element("data", { id, expr }));
  const states = Object.values(config.states).map((state) => writeState(state, true));
  const root = {
    xmlns: "http://www.w3.org/2005/07/scxml",
    version: "1.0",
    datamodel: "ecmascript",
    name,
    initial: stateName(config.states[config.initial]?.id ?? config.initial),
  };
  const body = [`<!--${readMe}-->`, element("datamodel", {}, data), ...states];
  return `<?xml version="1.0" encoding="UTF-8"?>\n${element("scxml", root, body)}\n`;
}

/** A state's name as an XML id, which may hold no "/". */
export function stateName(id: string): string {
  return id.replaceAll("/", ".");
}

function writeState(state: StateConfig, top: boolean): string {
  const ways = [
    ...Object.entries(state.on ?? {}).flatMap(([event, all]) =>
      [all].flat().map((way) => writeWay(way, state, event)),
    ),
    ...(state.always ?? []).map((way) => writeWay(way, state, null)),
  ];
  const children = Object.values(state.states ?? {}).map((child) => writeState(child, false));
  const first = state.initial && state.states?.[state.initial];
  const attributes = { id: stateName(state.id), ...(first ? { initial: stateName(first.id) } : {}) };
  // A final state at the top ends the run, as nothing leads on from it.
  const tag = top && ways.length + children.length === 0 ? "final" : "state";
  return element(tag, attributes, [...ways, ...children]);
}

function writeWay(way: Transition, state: StateConfig, event: string | null): string {
  const attributes = {
    ...(event === null ? {} : { event }),
    ...(way.guard ? { cond: compileGuard(way.guard) } : {}),
    target: stateName(way.target.replace(/^#/, "")),
  };
  const notes = (way.actions ?? []).flatMap(({ params }) => compileNote(params, event, state.meta));
  return element(
    "transition",
    attributes,
    notes.map(([place, expr]) => element("assign", { location: place, expr })),
  );
}
