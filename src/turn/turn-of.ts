import type { TurnMeta } from "../chart/index.ts";
import { limitOf } from "../measuring/index.ts";
import { memoryOf, metaOf, type Session, stillSo } from "../session/index.ts";
import type { Texts } from "./actions.ts";
import { becauseOf } from "./because.ts";
import { endingOf, putRight } from "./ending-of.ts";
import { hazardsOf } from "./hazards.ts";
import { changedChips, leftLines } from "./left-lines.ts";
import { pathOf, pathText } from "./path.ts";
import { readingNeedOf } from "./reading-need.ts";
import { standingAt } from "./standing.ts";
import type { Answer, Gate, Turn, Wait } from "./turn.ts";

/**
 * The turn a session waits at, as plain data in the reader's language.
 * @param now RFC 3339; only its day matters, for readings that ask for a date
 */
export function turnOf(session: Session, texts: Texts, now: string): Turn {
  const meta = metaOf(session);
  const { flow } = session;
  const path = pathOf(session, texts);
  const words = wordsOf(session, meta, texts);
  const left = leftLines(session, meta, texts);
  const isSteps = meta.outcome && meta.outcome !== "stopped";
  return {
    turn: meta.turn,
    kind: meta.kind,
    station: meta.station ?? null,
    // Behind a gate the hazards were confirmed a moment ago; they are shown again, briefly, on the step itself.
    hazards: hazardsOf(
      flow,
      meta.kind === "gate" ? (flow.gates[meta.gate ?? ""]?.covers ?? []) : (meta.hazards ?? []),
      texts,
    ),
    gated: meta.gated ?? false,
    ...words,
    // What a turn needs put back comes before its own steps; an ending has it as steps of its own, a stop as advice.
    body: meta.needs ? [...left, ...words.body] : isSteps ? words.body : [...words.body, ...left],
    why: [words.why, becauseOf(session, meta, texts)].filter(Boolean).join(" "),
    minutes: meta.minutes ?? 0,
    tools: (meta.tools ?? []).map((tool) => texts(`tools.${tool}`)),
    picture: meta.picture ?? null,
    answers: answersOf(session, meta, texts),
    gate: gateOf(session, meta, texts),
    reading: readingNeedOf(session, meta, now),
    wait: waitOf(session, meta, texts),
    ending: meta.outcome ? { ...endingOf(session, meta.outcome, texts), back: isSteps ? left : [] } : null,
    ...standingAt(session, meta, texts),
    changed: changedChips(session, texts),
    path,
    pathText: pathText(path, texts),
  };
}

type Words = Pick<Turn, "heading" | "body" | "note" | "why">;

function wordsOf(session: Session, meta: TurnMeta, texts: Texts): Words {
  const lines = (text: string) =>
    text
      .split("\n")
      .map((line) => line.trim())
      .filter(Boolean);
  const { danger, cause } = memoryOf(session);
  if (meta.gate)
    return {
      heading: texts(meta.short ? "standing.still-so" : `gates.${meta.gate}.ask`),
      body: [],
      note: "",
      why: texts(`gates.${meta.gate}.why`),
    };
  if (meta.kind === "model")
    return {
      heading: texts("endings.model.ask"),
      body: lines(texts("endings.model.how")),
      note: texts("endings.model.note"),
      why: "",
    };
  if (meta.outcome === "stopped") {
    const advice = `dangers.${danger ?? "general"}`;
    return { heading: texts(`${advice}.heading`), body: lines(texts(`${advice}.do`)), note: "", why: "" };
  }
  if (meta.outcome === "fixed") {
    // Where nothing was broken, "it works again" would be wrong: such a cause has a headline of its own.
    const [own = texts("endings.fixed.heading"), ...more] = lines(texts(`causes.${cause}.ending`));
    const todo = texts(`causes.${cause}.ending`) ? more : lines(texts("endings.fixed.body"));
    return { heading: own, body: [...lines(putRight(session, texts)), ...todo], note: "", why: "" };
  }
  if (meta.outcome) {
    const ending = meta.outcome === "professional" && !cause ? "no-cause" : meta.outcome;
    const { claim, part = "" } = session.flow.causes[cause ?? ""] ?? {};
    // The cause is the headline wherever one is established; what more is said of it comes next.
    const is = ending === "part" || ending === "professional" ? texts(`causes.${cause}.is`) : "";
    const [named = "", ...more] = lines(is.replace(". ", ".\n"));
    const todo = ending === "part" && claim === "due" ? "due" : "body";
    const todoText = texts(`endings.${ending}.${todo}`, { part: texts(`parts.${part}.name`) });
    return {
      heading: named.replace(/\.$/, "") || texts(`endings.${ending}.heading`),
      body: [...more, ...lines(todoText)],
      note: "",
      why: "",
    };
  }
  const key = `checks.${meta.turn}`;
  const check = meta.turn.slice(0, meta.turn.indexOf("."));
  return {
    heading: texts(`${key}.ask`),
    body: lines(texts(`${key}.how`)),
    note: texts(`${key}.note`),
    why: texts(`${key}.why`) || (meta.check ? texts(`checks.${check}.why`) : ""),
  };
}

function answersOf(session: Session, meta: TurnMeta, texts: Texts): Answer[] {
  const own = (meta.answers ?? []).map((id) => ({
    id,
    text: meta.gate
      ? gateAnswer(id, meta.gate, meta.short, texts)
      : texts(`checks.${meta.turn}.answers.${id}`),
    role: "own" as const,
  }));
  const standing = (["not-sure", "cannot"] as const)
    .filter((id) => session.snapshot.can({ type: `answered.${id}`, at: session.log.started } as never))
    .map((id) => ({ id, text: standingText(id, meta, texts), role: id }));
  return [...own, ...standing];
}

function gateAnswer(id: string, gate: string, short: true | undefined, texts: Texts): string {
  if (id === "changed") return texts("standing.changed");
  return texts(`gates.${gate}.${short ? stillSo : id}`);
}

function standingText(id: "not-sure" | "cannot", meta: TurnMeta, texts: Texts): string {
  const own = meta.gate ? texts(`gates.${meta.gate}.cannot`) : texts(`checks.${meta.turn}.answers.${id}`);
  return own || texts(`standing.${id === "cannot" && meta.kind === "wait" ? "cannot-wait" : id}`);
}

function gateOf({ flow }: Session, meta: TurnMeta, texts: Texts): Gate | null {
  const rule = meta.gate ? flow.gates[meta.gate] : undefined;
  if (!rule || !meta.gate) return null;
  const key = `gates.${meta.gate}`;
  return {
    id: meta.gate,
    short: meta.short ?? false,
    signal: rule.signal,
    items: meta.short
      ? [{ id: stillSo, text: texts(`${key}.${stillSo}`) }]
      : rule.items.map((id) => ({ id, text: texts(`${key}.items.${id}`) })),
    next: texts(`checks.${meta.turn.split(".")[0]}.name`),
    facts: meta.short ? [] : rule.facts.map((id) => texts(`${key}.facts.${id}`)),
    minutes: limitOf(flow.limits, "gate-short-minutes"),
  };
}

function waitOf(session: Session, meta: TurnMeta, texts: Texts): Wait | null {
  const start = memoryOf(session).waits[meta.turn];
  if (!meta.lasts || !start) return null;
  const after = (minutes: number) => new Date(Date.parse(start) + minutes * 60_000).toISOString();
  return {
    from: start,
    until: after(meta.lasts),
    inside: (meta.inside ?? []).map(({ stage, after: minutes }) => ({
      text: texts(`inside.${stage}`),
      from: after(minutes),
    })),
  };
}
