/** What is for fingers and eyes on a screen only. */
const left =
  "button, fieldset, input, textarea, svg, img, figure, .dock, .way, .badge, .skeleton, [role=status], [role=img]";

/** Small enough that the longest ending goes on one page of paper. */
const sheet = `
  @page { margin: 12mm }
  * { margin: 0; padding: 0; font: inherit; list-style: none }
  body { font: 10pt/1.3 sans-serif; color: #000 }
  h2 { font-size: 16pt; font-weight: 700 }
  h3, h4, b, dt, summary { font-weight: 700 }
  p, ul, ol, h3, section, details { margin-top: 2mm }
  details > :not(summary), details::details-content { display: block; content-visibility: visible }
  ol { padding-inline-start: 5mm; list-style: decimal }
  .evidence { columns: 2; column-gap: 6mm; font-size: 9pt }
  .sum-up dl { columns: 2; column-gap: 6mm; margin-top: 2mm }
  dl > div { break-inside: avoid; margin-bottom: 2mm }
  .evidence li { break-inside: avoid; margin-bottom: 1mm }
`;

/**
 * Prints what is to be handed on, an ending or a summary, without the shop's page around it, on one page and without its
 * buttons: from a frame of its own, which goes once it is printed.
 */
export function printPage(shown: Element | null | undefined, title: string): void {
  const frame = document.createElement("iframe");
  frame.title = title;
  frame.style.cssText = "position:fixed;inset-inline-start:-9999px;border:0";
  shown?.append(frame);
  const { contentWindow: page } = frame as { contentWindow: (Window & typeof globalThis) | null };
  if (!shown || !page) return;
  const copy = shown.cloneNode(true) as Element;
  for (const each of copy.querySelectorAll(`iframe, ${left}`)) each.remove();
  for (const each of copy.querySelectorAll("details")) each.open = true;
  // A page's policy may forbid a style element, never a sheet that is made by script.
  const rules = new page.CSSStyleSheet();
  rules.replaceSync(sheet);
  page.document.adoptedStyleSheets = [rules];
  page.document.title = title;
  page.document.body.append(copy);
  page.addEventListener("afterprint", () => frame.remove());
  page.print();
}
