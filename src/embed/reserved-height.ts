/**
 * Keeps the height that the page reserves for `host`, as a rule in `sheet`. The panel's rules take all of the page's away:
 * the height is read while `root` wears none. It is read twice, as this file may come before the page's style: a page
 * paints its first frame when its style is there, and the observer is called with that frame's layout.
 */
export function keepReservedHeight(host: HTMLElement, root: ShadowRoot, sheet: CSSStyleSheet): void {
  const keep = () => {
    const worn = [...root.adoptedStyleSheets];
    root.adoptedStyleSheets = [];
    sheet.replaceSync(`:host{min-height:${getComputedStyle(host).minHeight}!important}`);
    root.adoptedStyleSheets = worn;
  };
  keep();
  new ResizeObserver((_, watch) => {
    watch.disconnect();
    keep();
  }).observe(host);
}
