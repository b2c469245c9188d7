import { FridgesidePanel } from "./element.ts";

/** Registers the tag, unless it is there already: a shop's tag manager may load this file twice. */
export function definePanel(registry: CustomElementRegistry = customElements): void {
  if (!registry.get("fridgeside-panel")) registry.define("fridgeside-panel", FridgesidePanel);
}
