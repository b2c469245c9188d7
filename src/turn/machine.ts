import { foldCode, normaliseCode } from "../catalogue/index.ts";
import type { Session } from "../session/index.ts";
import type { Texts, View } from "./actions.ts";
import { changedChips } from "./left-lines.ts";
import { pathOf, pathText } from "./path.ts";

/** The turn that asks whether a kept session is still about its machine; it lies outside of the chart. */
export const machineTurn = "resumed.machine";

/** Go on with the machine of the kept session, or start anew with the one of the page. */
export type MachineAnswer = "kept" | "shown";

/**
 * True where a session is about another machine than the page: its part must then not be shown. Codes are compared as
 * the catalogue finds them. A session without a code is about no machine yet.
 * @param kept the model that the session is about, as somebody confirmed it or as a page gave it
 * @param shown the model that the page is about
 */
export function isOtherModel(kept: string | null, shown: string | null): boolean {
  return kept !== null && shown !== null && comparable(kept) !== comparable(shown);
}

/** The question for the machine as a screen draws it: two answers and the way out of a danger, nothing else. */
export function machineView(session: Session, kept: string, shown: string, texts: Texts): View {
  const path = pathOf(session, texts);
  const values = { kept, shown };
  const answers = (["kept", "shown"] as const).map((id) => ({
    id,
    text: texts(`resumed.machine.${id}`, values),
    role: "own" as const,
  }));
  return {
    turn: {
      turn: machineTurn,
      kind: "choice",
      station: null,
      hazards: [],
      gated: false,
      heading: texts("resumed.machine.ask", values),
      body: [texts("resumed.machine.how", values)],
      note: "",
      why: "",
      minutes: 0,
      tools: [],
      picture: null,
      answers,
      gate: null,
      reading: null,
      wait: null,
      ending: null,
      means: "",
      likely: [],
      left: 0,
      changed: changedChips(session, texts),
      path,
      pathText: pathText(path, texts),
    },
    lines: [],
    notices: [],
    dangers: session.flow.dangers.map((id) => ({
      id,
      text: texts(`checks.opening.danger.answers.${id}`),
    })),
    ways: ["danger"],
  };
}

function comparable(code: string): string {
  const typed = normaliseCode(code);
  return typed.kind === "code" ? foldCode(typed.code) : code;
}
