import type { Complain } from "../loading/index.ts";
import { hexOf, type Rgb, rgbOf } from "./contrast.ts";
import {
  type Colours,
  chooseColours,
  type ShopColour,
  shopColourNames,
  type Tone,
  tones,
} from "./shop-colours.ts";

export { createGreeting } from "../panel/screens/greeting/index.ts";
export { ownWordsAt, putOwnWords } from "./own-words-at.ts";

/** How far a shop may go, in px: rounder corners would cut into words, wider gaps push the answers off a phone's screen. */
const lengths = {
  "--fridgeside-radius": { tone: "radius", least: 0, most: 24 },
  "--fridgeside-space": { tone: "space", least: 4, most: 20 },
};

/**
 * What of a shop's own look holds on a panel, as rules for its host. Looked up anew for each theme: the properties may
 * say `light-dark(…)`, or stand in a media query of the page.
 * @param sheet the sheet that the rules are meant for; none of its rules holds meanwhile
 */
export function dress(host: HTMLElement, sheet: CSSStyleSheet, complain: Complain): void {
  sheet.replaceSync("");
  const root = host.shadowRoot as ShadowRoot;
  // In the panel's own tree, where no rule of the page holds, and gone again before anything is drawn.
  const probe = root.appendChild(document.createElement("i"));
  probe.style.display = "none";
  const computed = getComputedStyle(host);
  const set = (name: string) => computed.getPropertyValue(name).trim().slice(0, 500);
  const refuse = (name: string, wants: string) =>
    complain(`the property ${name} must be ${wants}; got "${set(name).slice(0, 80)}". It is ignored.`);

  const shop: Partial<Record<ShopColour, Rgb>> = {};
  for (const name of shopColourNames) {
    if (!set(name)) continue;
    const colour = readColour(probe, set(name));
    if (colour) shop[name] = colour;
    else refuse(name, "a colour that nothing shows through");
  }
  const own = Object.fromEntries(tones.map((tone) => [tone, rgbOf(set(`--fs-${tone}`))]));
  const isWhole = Object.values(own).every(Boolean);
  const { colours, complaints } = isWhole
    ? chooseColours(own as Record<Tone, Rgb>, shop)
    : { colours: {}, complaints: [] };
  for (const complaint of complaints) complain(complaint);
  const values = new Map(
    Object.entries(colours as Required<Colours>).map(([tone, colour]) => [tone, hexOf(colour)]),
  );

  for (const [name, { tone, least, most }] of Object.entries(lengths)) {
    if (!set(name)) continue;
    const length = readLength(probe, set(name));
    if (length !== null && length >= least && length <= most) values.set(tone, `${length}px`);
    else refuse(name, `a length from ${least}px to ${most}px`);
  }
  if (set("--fridgeside-font") && !CSS.supports("font-family", set("--fridgeside-font")))
    refuse("--fridgeside-font", "the name of a font, or a list of them");
  probe.remove();
  const rules = [...values].map(([tone, value]) => `--fs-${tone}:${value}!important;`).join("");
  // More specific than any theme of our own, whose colours are important as well: no page may set those.
  sheet.replaceSync(`:host(:not(#fs)){${rules}}`);
}

/** What the browser makes of a colour; null where it is none, or something shows through it. */
function readColour(probe: HTMLElement, written: string): Rgb | null {
  probe.style.color = "";
  probe.style.color = written;
  // A word that stands for what is around it says nothing here.
  if (!probe.style.color || /currentcolor|inherit|initial|unset|revert/i.test(written)) return null;
  // Whatever a colour is written in, a mix is computed as red, green and blue; old browsers leave it as it is.
  probe.style.color = `color-mix(in srgb, ${written}, ${written})`;
  return rgbOf(getComputedStyle(probe).color);
}

/** A length in px; null where it is none, or depends on what is around it. */
function readLength(probe: HTMLElement, written: string): number | null {
  probe.style.width = "";
  probe.style.width = written;
  const computed = probe.style.width ? getComputedStyle(probe).width : "";
  return /^[\d.]+px$/.test(computed) ? Number.parseFloat(computed) : null;
}
