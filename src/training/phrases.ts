import type { Resource } from "./resource.ts";

/** One sentence and what it is an example of, such as `answer opening.symptom.no-ice`. */
export type Phrase = { text: string; label: string };

/** Where something is and what something is: known by the way of asking and by the thing, each by a label of its own. */
const isAsked = /^(where|what)-/;

/** Of many patterns of asking, one in so many goes with the first name of a thing, and with each of its others. */
const FEW = 5;
const ONE_IN = [3, 12] as const;

/** What stands among the phrases and has none. */
const apart = new Set(["danger-rules", "ask-rules", "readings"]);

const standing = new Set(["not-sure", "cannot"]);

/** All phrases of a language, out of locales/<tag>/phrases; the wordings of the answers are phrases, too. */
export function phrasesOf(texts: Resource): Phrase[] {
  const {
    asides,
    dangers,
    harmless,
    unrelated,
    "said-alike": shared,
    words: _,
    ...named
  } = partOf(texts, "phrases");
  const { "danger-patterns": said, ...others } = named;
  const answers = Object.fromEntries(Object.entries(others).filter(([name]) => !apart.has(name)));
  const ofTurns = Object.values(answers).flatMap((turns) => ofAnswers(turns as Resource));
  const known = new Set(ofTurns.map(({ label }) => label));
  const all = [
    ...ofTurns,
    ...ofTurns.flatMap((phrase) => namedIn(phrase, partOf(texts, "checks"))),
    // An answer with nothing but its wording is held against that on the phone.
    ...ofWordings(partOf(texts, "checks")).filter(({ label }) => known.has(label)),
    ...Object.entries(asResource(shared)).flatMap(([id, said]) =>
      lines(asResource(said)["phrases"], `shared ${id}`),
    ),
    ...Object.entries(asResource(dangers)).flatMap(([id, text]) => lines(text, `danger ${id}`)),
    ...ofPatterns(asResource(said)),
    ...lines(asResource(harmless)["harmless"], "other harmless"),
    ...lines(asResource(unrelated)["unrelated"], "other unrelated"),
    ...ofAsides(asResource(asides)),
  ];
  const seen = new Set<string>();
  return all.filter(({ text, label }) => {
    const key = `${label}|${text.toLowerCase()}`;
    return !seen.has(key) && seen.add(key);
  });
}

/** By what is said alike at many turns, the answers that it gives: `<turn>.<answer>`, or `*.<answer>` at any turn. */
export function sharedOf(texts: Resource): Record<string, string> {
  const shared = asResource(partOf(texts, "phrases")["said-alike"]);
  return Object.fromEntries(
    Object.entries(shared).map(([id, said]) => [id, String(asResource(said)["for"] ?? "")]),
  );
}

/** What is said of 'it' said of the thing by its name: 'its dusty' as 'the condenser is dusty'. */
function namedIn({ text, label }: Phrase, checks: Resource): Phrase[] {
  const [, check = ""] = /^answer ([\w-]+)/.exec(label) ?? [];
  const name = asResource(checks[check])["name"];
  const said = /^(?:its|it is) (.*)/.exec(text)?.[1] ?? (text.split(" ").length === 1 ? text : undefined);
  return typeof name === "string" && said && check !== "opening"
    ? [{ text: `the ${name.toLowerCase()} is ${said}`, label }]
    : [];
}

function ofAnswers(turns: Resource): Phrase[] {
  return Object.entries(turns).flatMap(([turn, answers]) =>
    Object.entries(asResource(answers)).flatMap(([answer, text]) => lines(text, `answer ${turn}.${answer}`)),
  );
}

/** The answers as buttons have them. */
function ofWordings(checks: Resource): Phrase[] {
  return Object.entries(checks).flatMap(([check, turns]) =>
    Object.entries(asResource(turns)).flatMap(([turn, texts]) =>
      Object.entries(asResource(asResource(texts)["answers"]))
        .filter(([answer]) => !standing.has(answer))
        .flatMap(([answer, text]) => lines(text, `answer ${check}.${turn}.${answer}`)),
    ),
  );
}

/** Sentences said of each of some things, two of three of them: enough to be known by. */
function ofPatterns(patterns: Resource): Phrase[] {
  return Object.values(patterns).flatMap((held) => {
    const { things, ...said } = asResource(held);
    const all = String(things).split(", ");
    return Object.entries(said).flatMap(([label, text]) =>
      lines(text).flatMap((line, at) =>
        all
          .filter((_, place) => (place + at) % 3)
          .map((thing) => ({
            text: line.text.replace("%", thing),
            label: label === "harmless" ? "other harmless" : `danger ${label}`,
          })),
      ),
    );
  });
}

/** The questions that are known by the way of asking and the thing. */
export function askedOf(texts: Resource): string {
  const { where, what } = asResource(partOf(texts, "phrases")["asides"]);
  const each = (how: string, ids: unknown) =>
    String(ids ?? "")
      .split(" ")
      .filter(Boolean)
      .map((id) => `${how}-${id}`);
  return [...each("where", where), ...each("what", what)].join(" ");
}

function ofAsides({ patterns, things, phrases, where, what }: Resource): Phrase[] {
  const asked = Object.entries({ where, what }).flatMap(([how, ids]) =>
    String(ids ?? "")
      .split(" ")
      .filter(Boolean)
      .flatMap((id, which) =>
        String(asResource(things)[id] ?? "")
          .split(", ")
          .flatMap((thing, place) =>
            lines(asResource(patterns)[how])
              .filter(
                (_, at, all) => (at + which + place) % (all.length > FEW ? ONE_IN[place ? 1 : 0] : 1) === 0,
              )
              .map(({ text }) => ({ text: text.replace("%", thing), label: `asked ${how}-${id}` })),
          ),
      ),
  );
  return [
    ...asked,
    ...Object.entries(asResource(phrases)).flatMap(([id, text]) =>
      lines(text, `${isAsked.test(id) ? "asked" : "question"} ${id}`),
    ),
  ];
}

const asResource = (held: unknown): Resource =>
  typeof held === "object" && held !== null ? (held as Resource) : {};
const partOf = (texts: Resource, name: string) => asResource(texts[name]);

function lines(text: unknown, label = ""): Phrase[] {
  return typeof text === "string" ? text.split("\n").map((one) => ({ text: one, label })) : [];
}
