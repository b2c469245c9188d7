import { FridgesideDesk } from "./element.ts";

/** Registers the tag, unless it is there already: a page may load this file twice. */
export function defineDesk(registry: CustomElementRegistry = customElements): void {
  if (!registry.get("fridgeside-desk")) registry.define("fridgeside-desk", FridgesideDesk);
}
