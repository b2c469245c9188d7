import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";
import { evidenceOf } from "./ending-of.ts";
import { titleOf } from "./findings.ts";
import { showList } from "./formats.ts";
import { changedChips } from "./left-lines.ts";
import { linesOf } from "./lines.ts";
import { pathOf } from "./path.ts";
import type { Handover, PathMark } from "./turn.ts";
import { turnOf } from "./turn-of.ts";

/** What the session itself does not have: what was typed besides, and what the plate says beside the model number. */
export type Besides = { said: readonly string[]; variant?: string | undefined; serial?: string | undefined };

/**
 * Likeliest causes in words, what was found with its time, what is ruled out and not tried, the machine, what we had
 * changed, the cautions that were met and own words.
 * @param now RFC 3339
 */
export function handoverOf(
  session: Session,
  texts: Texts,
  now: string,
  { said, variant, serial }: Besides,
): Handover {
  const { events, started } = session.log;
  const memory = memoryOf(session);
  const turn = turnOf(session, texts, now);
  const language = texts("ui.locale");
  const dates = new Intl.DateTimeFormat(language, { dateStyle: "medium", timeStyle: "short" });
  const times = new Intl.DateTimeFormat(language, { timeStyle: "short" });
  const when = new Map(events.flatMap((event) => ("turn" in event ? [[event.turn, event.at] as const] : [])));
  const timed = (turn: string, text: string) => {
    const at = when.get(turn);
    return at ? `${times.format(Date.parse(at))} ${text}` : text;
  };
  const path = pathOf(session, texts);
  const at = (...states: PathMark["state"][]) =>
    path.flatMap(({ station, state }) => (states.includes(state) ? [texts(`thread.at.${station}`)] : []));
  const list = (key: string, stations: string[]) =>
    stations[0] ? [texts(`thread.${key}`, { stations: showList(language, stations) })] : [];
  const met = events.flatMap((event) =>
    event.type === "answered" && event.turn.includes(".gate-") && event.answer === "ready"
      ? `${times.format(Date.parse(event.at))} ${titleOf(event.turn, texts)}`
      : [],
  );
  const found = evidenceOf(session, memory.cause, texts).filter(
    ({ turn }) => !turn.startsWith("opening.") && turn !== "part.model",
  );
  const parts: [string, string[]][] = [
    [
      "machine",
      [
        memory.model ? `${texts("part.model")} ${memory.model}` : "",
        variant ? texts("carry.variant", { variant }) : "",
        serial ? texts("carry.serial", { serial }) : "",
        ...linesOf(session, texts)
          .filter(({ turn }) => turn.startsWith("opening."))
          .map(({ title, answer }) => `${title}: ${answer}`),
      ],
    ],
    ["open", turn.ending ? [turn.heading, turn.ending.who] : [turn.heading]],
    ["likely", likelyIn(session, texts)],
    ["changed", changedChips(session, texts).map(({ text }) => text)],
    [
      "found",
      found.map(({ turn, check, found, words }) =>
        timed(turn, `${check}: ${words ? texts("part.in-words", { found, words }) : found}`),
      ),
    ],
    [
      "looked",
      found[0] ? [...list("ruled-out", at("clear", "fixed")), ...list("not-tried", at("unseen"))] : [],
    ],
    ["cautions", met],
    ["said", said.map((words) => `“${words}”`)],
  ];
  const last = events.at(-1)?.at ?? started;
  return {
    title: texts("carry.times", {
      from: dates.format(Date.parse(started)),
      to: dates.format(Date.parse(last)),
    }),
    parts: parts.flatMap(([part, all]) => {
      const lines = all.filter(Boolean);
      return lines[0] ? [{ heading: texts(`carry.part.${part}`), lines }] : [];
    }),
  };
}

/** An established cause alone, else the likeliest ones with their places. */
function likelyIn(session: Session, texts: Texts): string[] {
  const memory = memoryOf(session);
  if (memory.cause) return [texts(`causes.${memory.cause}.is`)];
  const likely = session.adviser?.call(memory).likely ?? memory.likely;
  const named = likely.map((cause) => texts(`causes.${cause}.is`)).filter(Boolean);
  return named.map((cause, place) => `${place + 1}. ${cause}`);
}

/** The same as plain text, for a message. */
export function handoverText({ title, parts }: Handover): string {
  return [
    title,
    ...parts.flatMap(({ heading, lines }) => ["", heading, ...lines.map((line) => `- ${line}`)]),
  ].join("\n");
}
