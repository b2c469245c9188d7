/**
 * Moves the focus to the question that comes once a wait is over, as after a tap. Whoever types elsewhere on the page keeps
 * the focus, and whoever reads elsewhere keeps the place: both hear of it.
 * @param root of the panel
 */
export function leadOn(root: Document | ShadowRoot): void {
  const host = "host" in root ? root.host : root.body;
  let { activeElement } = document;
  while (activeElement?.shadowRoot && activeElement !== host)
    activeElement = activeElement.shadowRoot.activeElement;
  if (activeElement && activeElement !== host && activeElement !== document.body) return;
  // The next question is not drawn yet.
  requestAnimationFrame(() => {
    const { top, bottom } = host.getBoundingClientRect();
    root.querySelector("h2")?.focus({ preventScroll: bottom < 0 || top > innerHeight });
  });
}
