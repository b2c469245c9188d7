import { readFileSync } from "node:fs";
import { type Gallery, journalAt, type Place, stepsTo } from "../../demo/gallery/journal.js";
import {
  greetingOf,
  type Log,
  memoryOf,
  metaOf,
  putBack,
  replay,
  resume,
  type Session,
  standingOf,
  startSession,
  tell,
} from "../../src/session/index.ts";
import { turnOf } from "../../src/turn/index.ts";
import { guide, textsIn } from "../browser/expected.ts";
import { take } from "../session/drive.ts";

export const galleryFile = new URL("../../demo/gallery/places.json", import.meta.url);

export const readGallery = (): Gallery => JSON.parse(readFileSync(galleryFile, "utf8"));

/** The log of the session that the gallery has for a place, at the times at which it was written. */
export function logAt(gallery: Gallery, { after }: Place): Log {
  const began = Date.parse(gallery.began);
  const events = stepsTo(gallery, after).map(
    ({ minute, event }) => ({ ...event, at: new Date(began + minute * 60_000).toISOString() }) as never,
  );
  return { model: null, started: gallery.began, events };
}

/** A session at every turn of the chart, by the gallery's name for it; an ending with a proof once for each cause. */
export function sessionsOfGallery(names: string[]): Map<string, Session> {
  const gallery = readGallery();
  const places = new Map(gallery.places.map((place) => [place.name, place]));
  return new Map(
    names.map((name) => {
      const place = places.get(name);
      if (!place) throw new Error(`The gallery has no ${name}. Run npm run gallery.`);
      return [name, replay(guide, logAt(gallery, place)).session];
    }),
  );
}

/** Where a panel comes to that opens on a place at `now`, once its acts are done that lead to another turn. */
export function comeTo(gallery: Gallery, place: Place, now: number): Session {
  const at = new Date(now).toISOString();
  const standing = standingOf(journalAt(gallery, place.after, now - 2000 - 60_000 * (place.ago ?? 0)));
  let { session } =
    place.after === null ? { session: startSession(guide, at) } : resume(guide, standing.log, at);
  for (const act of place.acts ?? []) session = after(session, act, at);
  // Who has answered nothing is greeted.
  return (place.acts?.some((act) => act.do === "answer") ? null : greetingOf(session)) ?? session;
}

const texts = textsIn("en-GB");

function after(session: Session, act: NonNullable<Place["acts"]>[number], at: string): Session {
  if (act.do === "confirm") return take(session, "ready");
  if (act.do === "elsewhere")
    return resume(guide, standingOf(journalAt(readGallery(), act.after, Date.parse(at))).log, at).session;
  if (act.do !== "answer") return session;
  const greeting = greetingOf(session);
  const { turn, answers } = turnOf(greeting ?? session, texts, at);
  const { id: answer = "" } = answers[act.place] ?? {};
  if (!greeting) return take(session, answer);
  // Kept until its turn comes up: the chart begins with the danger.
  const told = tell(
    standingOf(journalAt(readGallery(), null, Date.parse(at))),
    { words: "", facts: [{ turn, answer }] },
    at,
    "told",
  );
  return putBack(session, told.held, at);
}

/** The turn where a session stands, and its cause. */
export const standOf = (session: Session) => ({
  turn: metaOf(session).turn,
  cause: memoryOf(session).cause,
});
