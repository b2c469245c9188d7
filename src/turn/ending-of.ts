import { proofTurns, type TurnMeta } from "../chart/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";
import { foundText, titleOf } from "./findings.ts";
import { hazardsOf } from "./hazards.ts";
import type { Ending, Evidence } from "./turn.ts";

/** Everything an ending says: its cause, its part or whom to call, and what was found on the way there. */
export function endingOf(session: Session, outcome: NonNullable<TurnMeta["outcome"]>, texts: Texts): Ending {
  const { cause, who, lastFixed, likely } = memoryOf(session);
  const rule = cause ? session.flow.causes[cause] : undefined;
  const part =
    outcome === "part" && rule?.part ? partOf(session, rule.part, rule.claim ?? "proved", texts) : null;
  const words = cause ? texts(`causes.${cause}.${outcome === "fixed" ? "fixed" : "is"}`) : "";
  return {
    outcome,
    cause: words || (lastFixed && outcome === "fixed" ? texts(`causes.${lastFixed}.fixed`) : ""),
    causeId: cause,
    likely:
      outcome === "professional"
        ? likely.flatMap((id) => (id === cause ? [] : likelyOf(session, id, texts)))
        : [],
    who: who && outcome === "professional" ? `${texts(`who.${who}.name`)}: ${texts(`who.${who}.tell`)}` : "",
    part,
    evidence: evidenceOf(session, cause, texts),
  };
}

function likelyOf({ flow }: Session, causeId: string, texts: Texts): Ending["likely"] {
  const part = flow.causes[causeId]?.part;
  const cause = texts(`causes.${causeId}.is`);
  return cause ? [{ causeId, cause, part: part ? texts(`parts.${part}.name`) : "" }] : [];
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
  };
}

/** The findings in the order they were made; those that prove the cause are marked. */
export function evidenceOf(session: Session, cause: string | null, texts: Texts): Evidence[] {
  const proof = cause ? proofTurns(session.flow, cause, memoryOf(session)) : [];
  return Object.entries(memoryOf(session).findings)
    .filter(([turn]) => turn !== "opening.danger" && !turn.includes(".gate-"))
    .map(([turn, finding]) => ({
      turn,
      check: titleOf(turn, texts),
      found: foundText(turn, finding, session.flow, texts),
      proves: proof.includes(turn),
    }));
}
