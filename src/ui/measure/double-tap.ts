import { useRef } from "preact/hooks";

/** So soon after a tap a second one is a wet thumb slipping, not a second answer. */
const SLIP_MS = 400;

/** Tells whether a tap comes too soon after the last one to be meant, so that it does nothing. */
export function useSlips() {
  const last = useRef(Number.NEGATIVE_INFINITY);
  return (tap: Event) => {
    const passed = tap.timeStamp - last.current;
    last.current = tap.timeStamp;
    return passed < SLIP_MS;
  };
}
