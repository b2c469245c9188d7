import { greetingOf, type Told } from "../session/index.ts";
import { greetedView, type Texts, type View } from "../turn/index.ts";
import type { Keeper } from "./keeper.ts";

/** What is shown before anything was answered, and what becomes of its answer. */
export type Greeter = {
  /** What is drawn in place of a view, where that is before the first answer. */
  view(view: View): View;
  /** Keeps what the turn that greets was answered with until its turn comes up; false for any other turn. */
  take(turn: string, answer: string, words?: string): boolean;
  /** Shows the turn that greets once more; false once something else was answered. */
  again(): boolean;
};

export function createGreeter(keeper: Keeper, texts: Texts, tell: (told: Told) => void): Greeter {
  const toldOf = () => keeper.held.find(({ event }) => event.turn === keeper.session.flow.greets)?.id ?? null;
  /** What was told and is asked for anew; whatever is told later, by a tap or in a sentence, takes its place. */
  let again: string | null = null;
  return {
    view: (view) =>
      greetedView(view, keeper.session, keeper.held, texts, again !== null && again === toldOf()),
    take(turn, answer, words = "") {
      const { session } = keeper;
      if (turn !== session.flow.greets || !greetingOf(session)) return false;
      tell({ words, facts: [{ turn, answer }] });
      return true;
    },
    again() {
      if (!greetingOf(keeper.session)) return false;
      again = toldOf();
      return true;
    },
  };
}
