import type { Act, Gallery, Place } from "../../demo/gallery/journal.js";
import { record, replay, resume, type Session } from "../../src/session/index.ts";
import { turnOf } from "../../src/turn/index.ts";
import { readLocales } from "../../src/workbench/build/locales-folder.ts";
import { feed, flow, freshSession, guide, textsIn } from "../browser/expected.ts";
import { standOf } from "./read-gallery.ts";

/** The first part cause by its name: whatever is special about a part is shown of one. */
const ofOnePart = "seal-worn";

/** The gallery of these sessions, one at every turn, with the states of the panel that are no turns. */
export function composeGallery(found: Map<string, Session>): Gallery {
  const steps: Gallery["steps"] = [];
  const known = new Map<string, number>();
  const began = freshSession().log.started;

  /** The number of a session's last step. Ways that begin alike share their steps. */
  function lay({ log }: Session): number | null {
    let after: number | null = null;
    for (const { at, ...event } of log.events) {
      const minute = (Date.parse(at) - Date.parse(began)) / 60_000;
      const key = JSON.stringify([after, minute, event]);
      const step: number = known.get(key) ?? steps.push([after, minute, event as never]) - 1;
      known.set(key, step);
      after = step;
    }
    return after;
  }

  const place = (name: string, session: Session, acts: Act[] = []): Place => {
    const all = [...actsTo(name, session), ...acts];
    return { name, after: lay(session), ...(all.length > 0 && { acts: all }) };
  };
  const at = (name: string) => {
    const session = found.get(name);
    if (!session) throw new Error(`No session came to ${name}`);
    return session;
  };
  /** A day's ice was waited for while the page was shut. */
  function waitedFor(): Place {
    const [left, ago] = [at("ice-count.wait"), 25 * 60];
    const later = new Date(Date.parse(after(left)) + ago * 60_000).toISOString();
    const { turn } = standOf(resume(guide, left.log, later).session);
    return { ...place(`${turn} wait-over`, left), ago };
  }
  /** One answer more was given in another tab. */
  function wentOnElsewhere(): Place {
    const went = at("ice-bin.look");
    const { session } = replay(guide, { ...went.log, events: went.log.events.slice(0, -1) });
    const goes: Act = { do: "elsewhere", after: lay(went) ?? 0 };
    return { name: "ice-bin.look other-tab", after: lay(session), acts: [goes] };
  }
  const places = [
    ...[...found].map(([name, session]) => place(name, session)),
    ...partsOf(found).map(([name, session]) => place(name, session)),
    ...guide.flow.dangers.map((danger) =>
      place(`stopped.end ${danger}`, act(freshSession(), { type: "danger-reported", danger, at: began })),
    ),
    ...states.map(({ on, is, acts, ...rest }) => ({
      ...(on ? place(is, at(on), acts) : { name: is, after: null, ...(acts[0] && { acts }) }),
      ...rest,
    })),
  ];
  places.push(waitedFor(), wentOnElsewhere());
  const languages = Object.keys(readLocales());
  return {
    about: "Written by `npm run gallery`. See demo/docs/colours-and-words.md.",
    ...{ began, languages, places: places.sort((one, other) => order(one) - order(other)), steps },
  };
}

const getsPerson: Act[] = [...opens(), { do: "press", what: ".person > button" }];

type State = { on: string; is: string; acts: Act[] } & Omit<Place, "name" | "after" | "acts">;

/** What no session leads to: where a state stands (`on`, nothing for a page that nobody has answered), and what is done there. */
const states: State[] = [
  { on: "", is: "opening.symptom greeting", acts: [] },
  { on: "", is: "opening.symptom own-words", acts: says("there is a puddle on the floor") },
  { on: "", is: "opening.symptom side-question", acts: says("what does an engineer cost") },
  { on: "ice-bin.look", is: "ice-bin.look danger-asked", acts: [{ do: "press", what: ".danger" }] },
  { on: "ice-bin.look", is: "ice-bin.look menu", acts: opens() },
  { on: "ice-bin.look", is: "ice-bin.look restart-asked", acts: opens("restart") },
  { on: "ice-bin.look", is: "ice-bin.look help-asked", acts: opens("help") },
  { on: "ice-bin.look", is: "ice-bin.look fixed-asked", acts: opens("ice") },
  { on: "ice-bin.look", is: "ice-bin.look not-kept", acts: [], full: true },
  { on: "opening.danger", is: "opening.danger denied", acts: [], denied: true },
  { on: "ice-bin.look", is: "ice-bin.look offline", acts: [], offline: true },
  { on: "ice-bin.look", is: "ice-bin.look link-broken", acts: [], fragment: "#fridgeside=broken" },
  { on: "ice-bin.look", is: "ice-bin.look live-asked", acts: getsPerson, relay: true },
  { on: "ice-bin.look", is: "ice-bin.look set-aside", acts: [], ago: 60 * 1440 },
  { on: "ice-bin.look", is: "ice-bin.look forgotten", acts: opens("forget") },
  { on: "fixed.end", is: "fixed.end asked-later", acts: [], ago: 25 * 60 },
  { on: "fixed.end", is: "fixed.end machine", acts: opens("machine") },
  { on: "flow-test.run", is: "flow-test.run running", acts: [{ do: "press", what: ".dial" }] },
  { on: `part.model ${ofOnePart}`, is: "part.model near-miss", acts: looksUp("BLQ254NH/A0") },
  { on: `part.model ${ofOnePart}`, is: "part.model not-known", acts: looksUp("QQQ 999 999") },
];

function opens(way?: string): Act[] {
  const menu: Act = { do: "press", what: "button.menu" };
  return way ? [menu, { do: "press", what: `.ask > .${way}` }] : [menu];
}

function says(words: string): Act[] {
  return [
    { do: "type", what: ".foot :is(input, textarea)", words },
    { do: "press", what: ".foot [type=submit]" },
  ];
}

function looksUp(words: string): Act[] {
  return [
    { do: "type", what: ".model input", words },
    { do: "press", what: ".model [type=submit]" },
  ];
}

/** Every part with its card, and one of them as a shop may not have it. */
function partsOf(found: Map<string, Session>): [name: string, session: Session][] {
  const kindOf = (cause: string) => flow.causes[cause]?.part ?? "";
  const isIn = (stock: RegExp) => (kind: string) => (code: string) => {
    const parts = feed.parts.filter((part) => part.kind === kind && part.fits.includes(code));
    return parts.length > 0 && parts.every((part) => stock.test(part.stock));
  };
  const given = (name: string, code: string | null): Session =>
    act(found.get(name) as Session, {
      ...{ type: "model-given", turn: "part.model", code, typed: code ?? "" },
      at: after(found.get(name) as Session),
    });
  const codeFor = (fits: (code: string) => boolean) =>
    feed.models.find(({ code }) => fits(code))?.code ?? null;
  const causes = [...found.keys()].filter((name) => name.startsWith("part.model "));
  const one = `part.model ${ofOnePart}`;
  const kind = kindOf(ofOnePart);
  return [
    ...causes.map((name): [string, Session] => {
      const cause = name.split(" ")[1] ?? "";
      const session = given(name, codeFor(isIn(/^in-stock$/)(kindOf(cause))));
      return [`${standOf(session).turn} ${cause}`, session];
    }),
    ["part.card out-of-stock", given(one, codeFor(isIn(/^out-of-stock$/)(kind)))],
    [
      "part.card not-listed",
      given(
        one,
        codeFor((code) => !isIn(/./)(kind)(code)),
      ),
    ],
    ["part.card no-model", given(one, null)],
  ];
}

function act(session: Session, event: Parameters<typeof record>[1]): Session {
  const { session: next, refusal } = record(session, event);
  if (refusal) throw new Error(`${JSON.stringify(event)}: ${refusal}`);
  return next;
}

const after = ({ log }: Session) =>
  new Date(Date.parse(log.events.at(-1)?.at ?? log.started) + 60_000).toISOString();

/** What a panel that comes back to a session asks before it is where it was left: gates, and a tap that they had closed. */
function actsTo(name: string, left: Session): Act[] {
  const { turn } = standOf(left);
  const texts = textsIn("en-GB");
  if (left.log.events.length === 0) return [{ do: "answer", place: 0 }];
  let { session } = resume(guide, left.log, after(left));
  const acts: Act[] = [];
  while (standOf(session).turn !== turn) {
    const now = after(session);
    const { answers, gate, turn: on } = turnOf(session, texts, now);
    const ids = gate ? ["ready"] : answers.map(({ id }) => id);
    const led = ids.map((id) =>
      record(session, {
        ...{ type: "answered", turn: on, answer: id, at: now },
        ...(gate && { items: gate.items.map(({ id }) => id) }),
      } as never),
    );
    const place = gate ? 0 : led.findIndex((one) => standOf(one.session).turn === turn);
    const next = led[place];
    if (!next || next.refusal || acts.length > 9)
      throw new Error(`${name} is not come back to: it stays at ${on}`);
    acts.push(gate ? { do: "confirm" } : { do: "answer", place });
    session = next.session;
  }
  return acts;
}

/** As a search goes: the opening, its checks by their names, the endings. */
function order({ name }: Place): number {
  const groups = [
    flow.opening.id,
    ...Object.keys(flow.checks).sort(),
    "part",
    "professional",
    "fixed",
    "stopped",
  ];
  return groups.indexOf(name.split(".")[0] ?? "");
}
