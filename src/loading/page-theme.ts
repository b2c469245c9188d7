/** The mark on the tag that says how the page around it looks; the panel's rules read it. */
const mark = "data-fs-page";

/**
 * Marks the tag as standing on a light or a dark page, by the background behind it, else by the page's colour scheme.
 * No mark where the page follows the phone, or where the tag's own `theme` decides.
 */
export function markPage(host: HTMLElement): void {
  const isOwn = /^(light|dark)$/.test(host.getAttribute("theme") ?? "");
  const scheme = isOwn ? "" : schemeAround(host);
  if (scheme) host.setAttribute(mark, scheme);
  else host.removeAttribute(mark);
}

function schemeAround(host: Element): string {
  for (let at = parentOf(host); at; at = parentOf(at)) {
    const lightness = lightnessOf(getComputedStyle(at).backgroundColor);
    if (lightness !== null) return lightness > 0.5 ? "light" : "dark";
  }
  // What shows through all of them is the canvas, whose colour is the root's.
  const { colorScheme } = getComputedStyle(document.documentElement);
  const meta = document.querySelector<HTMLMetaElement>('meta[name="color-scheme"]');
  const schemes = /dark|light/.test(colorScheme) ? colorScheme : (meta?.content ?? "");
  if (!/dark/.test(schemes)) return "light";
  return /light/.test(schemes) ? "" : "dark";
}

const parentOf = (at: Element) => at.parentElement ?? (at.getRootNode() as Partial<ShadowRoot>).host ?? null;

/** 0 for black to 1 for white; null for what lets the background behind it through, or is written in other ways. */
function lightnessOf(colour: string): number | null {
  const [first = 0, green = 0, blue = 0, alpha = 1] = colour.match(/[\d.]+/g)?.map(Number) ?? [];
  if (alpha < 0.5) return null;
  if (colour.startsWith("ok")) return first;
  // Shares of the three in luminance, in tenths (ITU-R BT.709: 0.21, 0.72, 0.07).
  return colour.startsWith("rgb") ? (2 * first + 7 * green + blue) / 2550 : null;
}
