/**
 * Moves the focus to a question that has come by itself, as after a tap. Whoever types elsewhere on the page keeps the
 * focus, and whoever reads elsewhere keeps the place: both hear of it.
 */
export function leadToQuestion(host: HTMLElement): void {
  const { activeElement } = host.getRootNode() as Document;
  if (activeElement && activeElement !== host && activeElement !== document.body) return;
  const { top, bottom } = host.getBoundingClientRect();
  host.shadowRoot?.querySelector("h2")?.focus({ preventScroll: bottom < 0 || top > innerHeight });
}
