import { act } from "preact/test-utils";

/** A click as a finger makes it, at an instant in milliseconds and a place in the window; detail 0 is a key's. */
export function clickAt(target: Element, at: number, { x = 50, y = 50, detail = 1 } = {}): Promise<void> {
  const about = { bubbles: true, cancelable: true, composed: true, detail, clientX: x, clientY: y };
  const event = new MouseEvent("click", about);
  Object.defineProperty(event, "timeStamp", { value: at });
  // Only a browser can make such events; the panel tells them from a script's.
  Object.defineProperty(event, "isTrusted", { value: true });
  return act(() => {
    target.dispatchEvent(event);
  });
}
