import type { Locator } from "@playwright/test";

/** What an element looks like: its place in the panel, and every computed property. */
type Look = { name: string; box: number[]; style: Record<string, string> };

/** The look of every element of the panel, the panel itself first. */
function looksOf(host: Locator): Promise<Look[]> {
  return host.evaluate((panel) => {
    // What stays at the window's foot is looked at where it belongs in the panel.
    panel.shadowRoot?.querySelector<HTMLElement>(".foot")?.style.setProperty("position", "static");
    const origin = panel.getBoundingClientRect();
    return [panel, ...(panel.shadowRoot?.querySelectorAll("*") ?? [])].map((element) => {
      const { x, y, width, height } = element.getBoundingClientRect();
      // What is folded away has a box or none, as the browser happens to have drawn it before.
      const shown = element.checkVisibility() ? [x - origin.x, y - origin.y, width, height] : [];
      const box = shown.map((value) => Math.round(value * 4) / 4);
      const computed = getComputedStyle(element);
      const style = Object.fromEntries([...computed].map((name) => [name, computed.getPropertyValue(name)]));
      return { name: `${element.localName}.${element.getAttribute("class") ?? ""}`, box, style };
    });
  });
}

/**
 * In what the panel looks different on two pages, a line each. Custom properties are the page's own business, and
 * where an element lies its box tells.
 */
export async function differencesBetween(plain: Locator, other: Locator): Promise<string[]> {
  const [expected, found] = [await looksOf(plain), await looksOf(other)];
  if (expected.length !== found.length) return [`${expected.length} elements became ${found.length}`];
  return expected.flatMap((look, index) => {
    const seen = found[index] as Look;
    const changed = Object.keys(look.style).filter(
      (name) => !/^(--|inset|top$|left$|right$|bottom$)/.test(name) && look.style[name] !== seen.style[name],
    );
    const lines = changed.map(
      (name) => `${look.name} ${name}: ${look.style[name]} became ${seen.style[name]}`,
    );
    if (`${look.box}` !== `${seen.box}`) lines.push(`${look.name} at ${look.box} became ${seen.box}`);
    return lines;
  });
}
