import { type Region, regionIn } from "../guide/index.ts";
import {
  type Guide,
  isStopped,
  memoryOf,
  metaOf,
  record,
  type Session,
  startSession,
} from "../session/index.ts";
import type { View } from "./actions.ts";
import { greetedView } from "./greeting.ts";
import { type FirstTurn, type OpeningTurn, turnFrom } from "./opening-view.ts";
import { createTexts, type Resource } from "./texts.ts";
import type { Turn } from "./turn.ts";
import { viewOf } from "./view.ts";

/** What the panel asks of the texts before the engine has arrived; its file has to be small. */
const firstTexts = [
  ...[
    "locale",
    "direction",
    "title",
    "loading",
    "slow",
    "lost",
    "shop",
    "shop-help",
    "cancel",
    "why",
    "menu",
  ],
  ...["danger", "danger-ask", "restart", "restart-ask", "restart-yes"],
  "change",
].map((key) => `ui.${key}`);

/** Texts with a form for each category of number that the language has. */
const countedTexts = ["ui.earlier"];

/** Any instant will do: neither the opening nor a stop shows a time. */
export const anyTime = "2026-01-01T00:00:00Z";

/**
 * The opening of each language and what every danger reported there leads to, drawn before the engine has arrived or
 * without it.
 * @param locales every language's texts; a language may lean on en-GB
 * @param regions where their readers may live
 */
export function createFirstTurns(
  guide: Guide,
  locales: Record<string, Resource>,
  regions: Record<string, Region>,
): Record<string, FirstTurn> {
  const first = startSession(guide, anyTime);
  const opening = openingSessions(first);
  const stopped = stoppedSessions(first);
  return Object.fromEntries(
    Object.keys(locales).map((language): [string, FirstTurn] => {
      const texts = createTexts(locales, language, { ...guide.flow, region: regionIn(regions, language) });
      const viewed = (session: Session) => withoutPath(viewOf(session, texts, anyTime, []));
      const { turn } = viewed(first);
      const {
        heading: _,
        body: __,
        note: ___,
        why: ____,
        answers: _____,
        turn: ______,
        ...alike
      } = turn as Turn;
      const turns = Object.fromEntries(
        opening.map((session) => [metaOf(session).turn, openingTurn(session, alike, viewed)]),
      );
      const greets = guide.flow.greets ?? "";
      const { heading: hello, note: aside = "" } = greetedView(viewed(first), first, [], texts).turn as Turn;
      if (turns[greets]) turns[greets] = { ...turns[greets], heading: hello, note: aside };
      const stops = stopped.map(([danger, session]) => [danger, viewed(session).turn as Turn] as const);
      const { heading, body, ...stop } = differenceOf(stops[0]?.[1] as Turn, turn as Turn);
      return [
        language,
        {
          language,
          texts: {
            ...Object.fromEntries(firstTexts.map((key) => [key, texts(key)])),
            ...countedIn(language, locales),
          },
          greets,
          turns,
          alike: withoutNothing(alike),
          // Help comes with the engine.
          ways: ["danger"],
          dangers: guide.flow.dangers,
          stop,
          stops: Object.fromEntries(stops.map(([danger, one]) => [danger, [one.heading, ...one.body]])),
        },
      ];
    }),
  );
}

const answered = (session: Session, answer: string): Session =>
  record(session, { type: "answered", turn: metaOf(session).turn, answer, at: anyTime }).session;

const checkOf = (session: Session) => metaOf(session).turn.split(".")[0];

/** A session at each turn of the opening. No turn of it looks different by another way to it; a test walks them all. */
function openingSessions(first: Session): Session[] {
  const found = new Map([[metaOf(first).turn, first]]);
  for (const session of found.values())
    for (const answer of [...(metaOf(session).answers ?? []), "not-sure"]) {
      const next = answered(session, answer);
      const { turn } = metaOf(next);
      if (checkOf(next) === checkOf(first) && !found.has(turn)) found.set(turn, next);
    }
  return [...found.values()];
}

function openingTurn(
  session: Session,
  alike: Partial<Turn>,
  viewed: (session: Session) => View,
): OpeningTurn {
  const turn = viewed(session).turn as Turn;
  const { heading, body, note, why } = turn;
  const answers = turn.answers.map(({ id, text }): OpeningTurn["answers"][number] => {
    const next = answered(session, id);
    const line = lineOf(session, viewed(next))?.answer ?? text;
    const lead = leadTo(next, session);
    return line !== text ? [id, text, lead, line] : lead ? [id, text, lead] : [id, text];
  });
  const short: OpeningTurn = {
    title: titleOf(session, viewed),
    heading,
    body,
    ...(note && { note }),
    ...(why && { why }),
    answers,
  };
  const more = differenceOf(turn, turnFrom({ turns: { [turn.turn]: short }, alike }, turn.turn));
  return Object.keys(more).length > 0 ? { ...short, more } : short;
}

/** The line of a session's turn in a view after its answer. */
const lineOf = (session: Session, { lines }: View) =>
  lines.findLast(({ turn }) => turn === metaOf(session).turn);

/** Its name in a folded line, which any answer but a stop has. */
function titleOf(session: Session, viewed: (session: Session) => View): string {
  const ids = metaOf(session).answers ?? [];
  return ids.map((id) => lineOf(session, viewed(answered(session, id)))?.title).find(Boolean) ?? "";
}

/** Where an answer has led, as far as that is in the opening or a stop. */
function leadTo(next: Session, from: Session): string {
  if (isStopped(next)) return `!${memoryOf(next).danger ?? "not-sure"}`;
  return checkOf(next) === checkOf(from) ? metaOf(next).turn : "";
}

/** Every form of the texts that name a number, as the language's file has them. */
function countedIn(tag: string, locales: Record<string, Resource>): Record<string, string> {
  const forms = ["en-GB", tag].map((each) => locales[each]?.["ui"] as Record<string, string> | undefined);
  return Object.fromEntries(
    Object.entries({ ...forms[0], ...forms[1] })
      .map(([key, text]) => [`ui.${key}`, text] as const)
      .filter(([key]) => countedTexts.some((counted) => key.startsWith(`${counted}_`))),
  );
}

/** A session stopped by each danger, by 'not sure', and by nothing that is known. */
function stoppedSessions(first: Session): [string, Session][] {
  const stops = [...first.flow.dangers, "not-sure"].map((danger): [string, Session] => [
    danger,
    record(first, { type: "danger-reported", danger, at: anyTime }).session,
  ]);
  const last = stops.at(-1)?.[1] ?? first;
  const context = { ...memoryOf(last), danger: null };
  return [...stops, ["general", { ...last, snapshot: { ...last.snapshot, context } as never }]];
}

/** The picture of the ice path comes with the engine, into a place that is kept for it. */
const withoutPath = (view: View): View => ({
  ...view,
  turn: view.turn && { ...view.turn, path: [], pathText: "" },
});

/** What is empty is not told: nothing that the first file draws looks at it. */
const withoutNothing = (turn: Partial<Turn>): Partial<Turn> =>
  Object.fromEntries(
    Object.entries(turn).filter(([, value]) => (Array.isArray(value) ? value.length : value)),
  );

/** What a turn has otherwise than another. */
function differenceOf(turn: Turn, other: Turn): Partial<Turn> {
  const differing = Object.entries(turn).filter(
    ([key, value]) => JSON.stringify(value) !== JSON.stringify(other[key as keyof Turn]),
  );
  return Object.fromEntries(differing);
}
