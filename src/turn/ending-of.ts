import { proofTurns, type TurnMeta } from "../chart/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";
import { foundText, titleOf } from "./findings.ts";
import { hazardsOf } from "./hazards.ts";
import type { Ending, Evidence } from "./turn.ts";

/** Everything an ending says: its cause, its part or whom to call, and what was found on the way there. */
export function endingOf(session: Session, outcome: NonNullable<TurnMeta["outcome"]>, texts: Texts): Ending {
  const memory = memoryOf(session);
  const { cause, who, lastFixed } = memory;
  const { adviser, flow } = session;
  const rule = cause ? flow.causes[cause] : undefined;
  const part =
    outcome === "part" && rule?.part ? partOf(session, rule.part, rule.claim ?? "proved", texts) : null;
  const believed =
    outcome === "part" ? adviser?.call(memory).likely : outcome === "professional" && memory.likely;
  const likely = (believed || []).filter(
    (id) => id !== cause && (!part || flow.causes[id]?.part !== part.kind),
  );
  const isOpen = outcome !== "fixed" && outcome !== "stopped";
  const words = cause ? texts(`causes.${cause}.${outcome === "fixed" ? "fixed" : "is"}`) : "";
  return {
    outcome,
    cause: words || (lastFixed && outcome === "fixed" ? texts(`causes.${lastFixed}.fixed`) : ""),
    causeId: cause,
    // Beside a part that is proved or due, the next one is enough.
    likely: likely.slice(0, part ? 1 : undefined).flatMap((id) => likelyOf(session, id, texts)),
    worth: part || outcome === "professional" ? worthOf(part ? rule?.who : who, texts) : [],
    until: isOpen ? untilOf(session, cause ?? likely[0], texts) : "",
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

/** Whether mending is worth its price, by who does it; empty where nobody is paid for it. No sums: only the shop knows those. */
function worthOf(trade: string | null | undefined, texts: Texts): string[] {
  const said = texts(trade ? `who.${trade}.worth` : "endings.worth");
  return said ? said.split("\n") : [];
}

/** What to do for ice until it is mended: a cause's own words, its station's, or a tray in the freezer. */
function untilOf({ flow }: Session, cause: string | undefined, texts: Texts): string {
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
  return Object.entries(memoryOf(session).findings)
    .filter(([turn]) => turn !== "opening.danger" && !turn.includes(".gate-"))
    .map(([turn, finding]) => ({
      turn,
      check: titleOf(turn, texts),
      found: foundText(turn, finding, session.flow, texts),
      proves: proof.includes(turn),
    }));
}
