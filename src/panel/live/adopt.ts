/** Has a panel know these rules; one that is started anew has only its own. */
export function adopt(element: Element | null, sheet: CSSStyleSheet): void {
  const root = element?.getRootNode();
  if (root instanceof ShadowRoot && !root.adoptedStyleSheets.includes(sheet))
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, sheet];
}
