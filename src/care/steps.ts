import { holds } from "../chart/index.ts";
import type { Guard } from "../condition/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { CareLine, CareTime, Texts } from "../turn/index.ts";
import type { CareRules } from "./rules.ts";

/** Whether what is said of some machines alone is said of the one that this search is about. */
export const isForMachine = ({ when }: { when?: Guard }, session: Session): boolean =>
  !when || holds(memoryOf(session), when, { type: "", at: session.log.started });

/** The steps that are for this machine, in order and in words; one behind a gate has it. */
export function stepsOf(rules: CareRules, time: CareTime, session: Session, texts: Texts): CareLine[] {
  return rules[time]
    .filter((step) => isForMachine(step, session))
    .map(({ id, gate }) => ({
      id,
      text: texts(`care.${time}.${id}`),
      gate: gate
        ? {
            id: gate.id,
            signal: gate.signal,
            why: texts(`gates.${gate.id}.why`),
            items: gate.items.map((item) => ({ id: item, text: texts(`gates.${gate.id}.items.${item}`) })),
            facts: gate.facts.map((fact) => texts(`gates.${gate.id}.facts.${fact}`)),
          }
        : null,
    }));
}
