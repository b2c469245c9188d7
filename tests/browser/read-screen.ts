/** Runs in the page: all that is looked at after each act, in one go. */
export function readScreen(host: Element, key: string) {
  const { shadowRoot } = host;
  const all = [...(shadowRoot?.querySelectorAll("button") ?? [])];
  const seen = all.filter((each) => each.checkVisibility({ visibilityProperty: true }));
  let kept: string | null = null;
  try {
    kept = localStorage.getItem(key);
  } catch {}
  // biome-ignore lint/performance/useDomNodeTextContent: As it is laid out; what is hidden is no text of the screen.
  const textOf = (each?: HTMLElement | null) => each?.innerText ?? "";
  return {
    shown: textOf(shadowRoot?.querySelector<HTMLElement>("section[aria-label]")),
    buttons: seen.map(textOf),
    tooWide: document.documentElement.scrollWidth - innerWidth,
    kept,
  };
}
