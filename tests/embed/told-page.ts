import type { Surroundings } from "../../src/embed/surroundings.ts";
import { createTeller, type Hears } from "../../src/embed/teller.ts";
import type { FridgesideEventName } from "../../src/insight/index.ts";
import { metaOf } from "../../src/session/index.ts";
import { endingOf } from "../../src/turn/index.ts";
import { type createMemory, open } from "./open-controller.ts";

export const eventNames: FridgesideEventName[] = [
  "fridgeside-started",
  "fridgeside-turn-shown",
  "fridgeside-answered",
  "fridgeside-back",
  "fridgeside-changed",
  "fridgeside-help-asked",
  "fridgeside-danger",
  "fridgeside-reading-taken",
  "fridgeside-part-shown",
  "fridgeside-ended",
  "fridgeside-left",
  "fridgeside-returned",
  "fridgeside-not-found",
];

/** So many pages were opened: what one page remembers of its panels, the next must not. */
let pages = 0;

/** A page that hears what its panel tells, on a storage that it may share with others; names are without the prefix. */
export function openTold(
  store: ReturnType<typeof createMemory>,
  clock: { now: string },
  more: Partial<Surroundings> = {},
  hears?: Hears,
) {
  const host = new EventTarget();
  const heard: [name: string, detail: Record<string, unknown>][] = [];
  for (const name of eventNames)
    host.addEventListener(name, (event) =>
      heard.push([name.replace("fridgeside-", ""), (event as CustomEvent).detail]),
    );
  const texts = (key: string) => (key === "ui.locale" ? "en-GB" : key);
  const ended: Surroundings["ended"] = (session) => {
    const outcome = metaOf(session).outcome;
    const { causeId, part } = endingOf(session, outcome ?? "stopped", texts);
    teller.ended({ outcome, cause: causeId, part: part?.kind ?? null, model: part?.model ?? null }, false);
  };
  const teller = createTeller(host, `panel-${pages++}`, ended);
  if (hears) teller.hear(hears);
  const views: Parameters<Surroundings["show"]>[0][] = [];
  const panel = open(
    store,
    clock,
    null,
    (work) => work(),
    () => true,
    {
      show: (view) => void views.push(view),
      added: teller.added,
      shown: (session) => teller.shown(session, views.at(-1)?.turn ?? null),
      ended,
      ...more,
    },
  );
  return {
    ...panel,
    teller,
    turn: () => views.at(-1)?.turn?.turn,
    heard,
    /** What was heard since this was last asked, names and details. */
    news: () => heard.splice(0),
    named: (name: string) => heard.filter(([each]) => each === name).map(([, detail]) => detail),
  };
}
