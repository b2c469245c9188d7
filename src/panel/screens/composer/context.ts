import type { Fact, Turn, TypedContext, View } from "../../../turn/index.ts";
import type { ScreenProps } from "../../frame/index.ts";

/** Where a sentence is typed. A gate is passed by its ticks alone: no sentence may mean that it is ready. */
export function contextOf(
  turn: Turn,
  view: View,
  now: string,
  models: ReadonlyMap<string, string>,
): TypedContext {
  const { reading } = turn;
  return {
    turn: turn.turn,
    answers: turn.answers.filter(({ id }) => turn.kind !== "gate" || id !== "ready"),
    instrument: reading?.instrument ?? null,
    region: reading?.region ?? null,
    today: now.slice(0, 10),
    isOpen: (fact) => openAmong([fact], view).length > 0,
    findModel: (code) => models.get(code) ?? null,
  };
}

/** Whoever has answered a question need not be asked whether they meant it so. */
export const openAmong = (facts: readonly Fact[], { lines }: View): Fact[] =>
  facts.filter((fact) => lines.every(({ turn }) => turn !== fact.turn));

/** The models that are named in a sentence, by how they were typed; what cannot be looked up is none. */
export async function modelsIn(
  codes: readonly string[],
  services: ScreenProps["services"],
): Promise<Map<string, string>> {
  const found = new Map<string, string>();
  if (!services.canLookUp()) return found;
  for (const typed of codes) {
    const model = await services.findModel(typed).catch(() => null);
    if (model?.kind === "exact") found.set(typed, model.model.code);
  }
  return found;
}
