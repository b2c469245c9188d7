import type { Ending, Evidence, Texts, Turn } from "../../../turn/index.ts";
import { showList } from "../reading/index.ts";
import { glanceOf } from "./glance.ts";

/** What stands above the likely causes: whether one is established already, and whether it takes a part. */
export const likelyHead = ({ part, causeId }: Ending) =>
  `part.${part ? "next" : causeId ? "else" : "likely"}`;

/** The parts that were fitted without help, in a sentence; empty where none was. */
export const triedText = ({ tried }: Ending, texts: Texts) =>
  tried[0] ? texts("part.tried", { parts: showList(texts, tried) }) : false;

/**
 * The ending in plain text, for a message to a shop or a repairer.
 * @param said what was typed besides
 * @param age what was answered about the age of the machine; empty where nothing was
 */
export function summaryOf(
  turn: Turn,
  found: Evidence[],
  { said, age }: { said: string[]; age: string },
  texts: Texts,
): string {
  const { heading, ending } = turn;
  if (!ending) return heading;
  const { outcome, cause, likely, part } = ending;
  const aged = ending.age?.options.find(({ id }) => id === age);
  const answered = found.map(({ words }) => words);
  const lines = [
    heading,
    // Elsewhere the heading is the cause.
    outcome === "fixed" && cause,
    likely[0] && texts(likelyHead(ending)),
    ...likely.map(({ cause, part }, place) =>
      [`${place + 1}. ${cause}`, part && texts("part.bring", { part })].filter(Boolean).join(" "),
    ),
    part?.model && `${texts("part.model")} ${part.model}`,
    part && `${texts("part.kind")} ${part.name}`,
    triedText(ending, texts),
    aged && age !== "unknown" && texts("part.age", { age: aged.text }),
    "",
    ...found.map(({ check, found: answer, words }, place) => {
      const isFirst = words && found.findIndex((each) => each.words === words) === place;
      return `- ${check}: ${isFirst ? texts("part.in-words", { found: answer, words }) : answer}`;
    }),
    ...said.filter((words) => !answered.includes(words)).map((words) => texts("part.said", { words })),
    ...glanceOf(turn, texts).flatMap(({ kind, text }) => (kind === "not-tried" ? [text] : [])),
  ];
  return lines.filter((line) => typeof line === "string").join("\n");
}
