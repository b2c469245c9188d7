import type { CareRules } from "../care/index.ts";
import { guardOf } from "../condition/index.ts";
import type { CareStep, CareTime, Flow } from "../guide/index.ts";

/** What a flow says of care, made ready for a phone. */
export function careOf({ care, gates, conditions }: Flow): CareRules {
  const spell = (when: string | undefined) => (when ? { when: guardOf({ is: when }, conditions) } : {});
  const stepOf = ({ id, gate: name, when }: CareStep) => {
    const gate = name ? gates[name] : undefined;
    return {
      id,
      ...(name && gate && { gate: { id: name, signal: gate.signal, items: gate.items, facts: gate.facts } }),
      ...spell(when),
    };
  };
  const at = (time: CareTime) => care[time].map(stepOf);
  const { filter } = care;
  return {
    filter: filter ? { part: filter.part, months: filter.months, ...spell(filter.when) } : null,
    use: at("use"),
    away: at("away"),
    return: at("return"),
  };
}
