/** A phone's keyboard slides in over a field after it has the focus; waits for it, then moves as little as needed. */
export function keepInSight(input: HTMLElement): void {
  setTimeout(() => {
    // Whoever has gone on meanwhile is looking elsewhere, perhaps about to tap there.
    const { activeElement } = input.getRootNode() as Document | ShadowRoot;
    if (activeElement === input) input.scrollIntoView({ block: "nearest" });
  }, 350);
}
