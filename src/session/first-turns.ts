import type { Flow } from "../flow/index.ts";
import type { View } from "./actions.ts";
import { startSession } from "./session.ts";
import { createTexts, type Resource } from "./texts.ts";
import { viewOf } from "./view.ts";

/** What the first file knows by heart in one language: the first view, and the panel's own texts. */
export type FirstTurn = { view: View; texts: Record<string, string> };

/** What the panel asks of ui.yaml before the engine has arrived; its file has to be small. */
export const firstTexts = ["locale", "direction", "title", "loading", "danger", "help", "restart"].map(
  (key) => `ui.${key}`,
);

/** Any instant will do: the opening shows no time. */
export const anyTime = "2026-01-01T00:00:00Z";

/**
 * The first question of each language, drawn before the engine has arrived.
 * @param locales every language's texts; a language may lean on en-GB
 */
export function createFirstTurns(flow: Flow, locales: Record<string, Resource>): Record<string, FirstTurn> {
  return Object.fromEntries(
    Object.keys(locales).map((tag) => {
      const texts = createTexts(locales, tag, flow.limits);
      const view = viewOf(startSession(flow, anyTime), texts, anyTime, []);
      return [tag, { view, texts: Object.fromEntries(firstTexts.map((key) => [key, texts(key)])) }];
    }),
  );
}
