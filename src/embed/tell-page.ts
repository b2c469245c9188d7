import type { FridgesideEventName, FridgesideEvents } from "../insight/index.ts";

/** Dispatches an event that bubbles out of the shadow root. */
export function tellPage<Name extends FridgesideEventName>(
  host: EventTarget,
  name: Name,
  detail: FridgesideEvents[Name],
): void {
  host.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
}
