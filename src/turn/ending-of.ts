import { proofTurns, type TurnMeta } from "../chart/index.ts";
import { anythingElse } from "../guide/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";
import { foundText, titleOf } from "./findings.ts";
import { hazardsOf } from "./hazards.ts";
import { wordsIn } from "./own-words.ts";
import type { Ending, Evidence } from "./turn.ts";
import { worthOf } from "./worth.ts";

/** Everything an ending says: its cause, its part or whom to call, and what was found on the way there. */
export function endingOf(session: Session, outcome: NonNullable<TurnMeta["outcome"]>, texts: Texts): Ending {
  const memory = memoryOf(session);
  const { cause, who, lastFixed } = memory;
  const rule = cause ? session.flow.causes[cause] : undefined;
  const part =
    outcome === "part" && rule?.part ? partOf(session, rule.part, rule.claim ?? "proved", texts) : null;
  const likely = part ? nextTo(session, part.kind) : outcome === "professional" ? memory.likely : [];
  const others = likely.filter((id) => id !== cause);
  const isOpen = outcome !== "fixed" && outcome !== "stopped";
  return {
    outcome,
    cause: outcome === "fixed" ? putRight(session, texts) : cause ? texts(`causes.${cause}.is`) : "",
    causeId: cause,
    likely: others.flatMap((id) => likelyOf(session, id, texts)),
    ...worthOf(
      part ? (rule?.who ?? "") : outcome === "professional" ? who : null,
      Boolean(part && session.flow.parts[part.kind]?.consumable),
      texts,
    ),
    until: isOpen ? untilOf(session, cause ?? others[0] ?? lastFixed, texts) : "",
    tried: outcome === "stopped" ? [] : triedIn(session, texts),
    who: who && outcome === "professional" ? `${texts(`who.${who}.name`)}: ${texts(`who.${who}.tell`)}` : "",
    part,
    evidence: evidenceOf(session, cause, texts),
  };
}

/** What was put right and did it, in words; empty where nothing was. */
export function putRight(session: Session, texts: Texts): string {
  const { cause, lastFixed } = memoryOf(session);
  const said = (id: string | null) => (id ? texts(`causes.${id}.fixed`) : "");
  return said(cause) || said(lastFixed);
}

function triedIn(session: Session, texts: Texts): string[] {
  const parts = memoryOf(session).fitted.map((cause) => session.flow.causes[cause]?.part ?? "");
  return [...new Set(parts)].map((part) => texts(`parts.${part}.name`));
}

/** Beside a part that is proved or due, the one cause that is likeliest next and needs something else. */
function nextTo(session: Session, part: string): string[] {
  const { likely = [] } = session.adviser?.call(memoryOf(session)) ?? {};
  const [next] = likely.filter((id) => session.flow.causes[id]?.part !== part);
  return next && next !== anythingElse ? [next] : [];
}

function likelyOf({ flow }: Session, causeId: string, texts: Texts): Ending["likely"] {
  const { part, station = "" } = flow.causes[causeId] ?? {};
  const cause = texts(`causes.${causeId}.is`);
  return cause ? [{ causeId, cause, part: part ? texts(`parts.${part}.name`) : "", station }] : [];
}

/** What to do for ice until it is mended: a cause's own words, its station's, or a tray in the freezer. */
function untilOf({ flow }: Session, cause: string | null | undefined, texts: Texts): string {
  const own = cause && texts(`causes.${cause}.until`);
  return own || texts(`endings.until.${flow.causes[cause ?? ""]?.station}`) || texts("endings.until.tray");
}

function partOf(session: Session, kind: string, claim: "proved" | "due", texts: Texts): Ending["part"] {
  const rule = session.flow.parts[kind];
  return {
    kind,
    name: texts(`parts.${kind}.name`),
    claim,
    claimText: texts(`claims.${claim}`),
    fitting: texts(`parts.${kind}.fitting`),
    effortMinutes: rule?.minutes ?? 0,
    tools: (rule?.tools ?? []).map((tool) => texts(`tools.${tool}`)),
    cautions: hazardsOf(session.flow, rule?.hazards ?? [], texts),
    model: memoryOf(session).model,
    picture: rule?.picture ?? null,
  };
}

/** The findings in the order they were made; those that prove the cause are marked. */
export function evidenceOf(session: Session, cause: string | null, texts: Texts): Evidence[] {
  const proof = cause ? proofTurns(session.flow, cause, memoryOf(session)) : [];
  const saidAt = new Map(
    session.log.events.flatMap((event) => ("turn" in event ? [[event.turn, event] as const] : [])),
  );
  return Object.entries(memoryOf(session).findings)
    .filter(([turn]) => turn !== "opening.danger" && !turn.includes(".gate-"))
    .map(([turn, finding]) => ({
      turn,
      check: titleOf(turn, texts),
      found: foundText(turn, finding, session.flow, texts),
      proves: proof.includes(turn),
      ...wordsIn(saidAt.get(turn), texts),
    }));
}
