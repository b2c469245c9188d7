import { type Guide, memoryOf, metaOf, record, type Session, startSession } from "../session/index.ts";
import type { View } from "./actions.ts";
import { createTexts, type Resource } from "./texts.ts";
import type { Turn } from "./turn.ts";
import { viewOf } from "./view.ts";

/** What the first file knows by heart in one language: the first view, every stop, and the panel's own texts. */
export type FirstTurn = {
  view: View;
  texts: Record<string, string>;
  stops: {
    /** What every stop has in place of the first question's. */
    turn: Partial<Turn>;
    ways: View["ways"];
    /** Headline and lines of each danger, of `not-sure` where that stops, and of `general` for any other. */
    words: Record<string, string[]>;
  };
};

/** What the panel asks of ui.yaml before the engine has arrived; its file has to be small. */
export const firstTexts = [
  ...["locale", "direction", "title", "loading", "slow", "lost", "shop", "shop-help", "cancel"],
  ...["danger", "danger-ask", "help", "help-ask", "help-yes", "restart", "restart-ask", "restart-yes"],
].map((key) => `ui.${key}`);

/** Any instant will do: neither the opening nor a stop shows a time. */
export const anyTime = "2026-01-01T00:00:00Z";

/**
 * The first question of each language and what every danger reported there leads to, drawn before the engine has
 * arrived or without it.
 * @param locales every language's texts; a language may lean on en-GB
 */
export function createFirstTurns(guide: Guide, locales: Record<string, Resource>): Record<string, FirstTurn> {
  const first = startSession(guide, anyTime);
  const stopped = stoppedSessions(first);
  return Object.fromEntries(
    Object.keys(locales).map((tag) => {
      const texts = createTexts(locales, tag, guide.flow.limits);
      const view = withoutPath(viewOf(first, texts, anyTime, []));
      const views = stopped.map(
        ([danger, session]) => [danger, withoutPath(viewOf(session, texts, anyTime, []))] as const,
      );
      const stop = views[0]?.[1] as View;
      return [
        tag,
        {
          view,
          texts: Object.fromEntries(firstTexts.map((key) => [key, texts(key)])),
          stops: {
            turn: differenceOf(stop.turn as Turn, view.turn as Turn),
            ways: stop.ways,
            words: Object.fromEntries(
              views.map(([danger, { turn }]) => [danger, [turn?.heading ?? "", ...(turn?.body ?? [])]]),
            ),
          },
        },
      ];
    }),
  );
}

/** A session stopped by each danger, by 'not sure' where the opening has that stop, and by nothing that is known. */
function stoppedSessions(first: Session): [string, Session][] {
  const stops = first.flow.dangers.map((danger): [string, Session] => [
    danger,
    record(first, { type: "danger-reported", danger, at: anyTime }).session,
  ]);
  const { turn } = metaOf(first);
  const unsure = record(first, { type: "answered", turn, answer: "not-sure", at: anyTime }).session;
  if (metaOf(unsure).outcome === "stopped") stops.push(["not-sure", unsure]);
  const last = stops.at(-1)?.[1] ?? first;
  const context = { ...memoryOf(last), danger: null };
  return [...stops, ["general", { ...last, snapshot: { ...last.snapshot, context } as never }]];
}

/** The picture of the ice path comes with the engine, into a place that is kept for it. */
const withoutPath = (view: View): View => ({
  ...view,
  turn: view.turn && { ...view.turn, path: [], pathText: "" },
});

/** What a stop's turn has otherwise than the first, but for its words. */
function differenceOf({ heading: _, body: __, ...turn }: Turn, first: Turn): Partial<Turn> {
  const differing = Object.entries(turn).filter(
    ([key, value]) => JSON.stringify(value) !== JSON.stringify(first[key as keyof Turn]),
  );
  return Object.fromEntries(differing);
}
