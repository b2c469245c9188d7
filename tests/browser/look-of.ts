import type { Page } from "@playwright/test";

/**
 * In what a panel that stands on a page looks different under each of these style sheets, a line each, the sheet's name
 * first. All computed properties of all its elements count, the panel itself first, and where each lies in it. Custom
 * properties are the page's own business, and where an element lies its box tells.
 * @param sheets addresses of sheets that take the place of the page's `#sheet`, one after the other
 */
export function changesUnder(page: Page, sheets: string[]): Promise<string[]> {
  return page.evaluate(async (sheets) => {
    const panel = document.querySelector("fridgeside-panel") as HTMLElement;
    const root = panel.shadowRoot as ShadowRoot;
    const link = document.querySelector("#sheet") as HTMLLinkElement;
    const plain = link.href;
    // What stays at the window's foot, or at the top, is looked at where it belongs in the panel.
    for (const each of root.querySelectorAll<HTMLElement>("*"))
      if (getComputedStyle(each).position === "sticky")
        each.style.setProperty("position", "static", "important");

    const names = [...getComputedStyle(panel)].filter(
      (name) => !/^(--|min-|inset|top$|left$|right$|bottom$)/.test(name),
    );
    const frames = async (count: number) => {
      for (let at = 0; at < count; at++) await new Promise(requestAnimationFrame);
    };
    const wear = (href: string) =>
      new Promise<void>((worn, failed) => {
        link.onload = () => worn();
        link.onerror = () => failed(new Error(`${href} did not come`));
        link.href = href;
      });
    const look = async () => {
      await frames(2);
      const moving = root
        .getAnimations()
        .filter((each) => each.effect?.getTiming().iterations !== Number.POSITIVE_INFINITY);
      await Promise.allSettled(moving.map((each) => each.finished));
      const origin = panel.getBoundingClientRect();
      return [panel, ...root.querySelectorAll("*")].map((element) => {
        const { x, y, width, height } = element.getBoundingClientRect();
        // What is folded away has a box or none, as the browser happens to have drawn it before.
        const box = element.checkVisibility() ? [x - origin.x, y - origin.y, width, height] : [];
        const computed = getComputedStyle(element);
        return {
          name: `${element.localName}.${element.getAttribute("class") ?? ""}`,
          lines: [
            `box: ${box.map((value) => Math.round(value * 100) / 100)}`,
            ...names.map((name) => `${name}: ${computed.getPropertyValue(name)}`),
          ],
        };
      });
    };
    /** Drawings are laid out by fractions of a pixel, and not twice by the very same. */
    const isAlike = (line: string, other = "") => {
      if (!line.startsWith("box: ")) return line === other;
      const [here, there] = [line, other].map((each) => each.slice(5).split(",").map(Number));
      return (
        here?.length === there?.length &&
        (here ?? []).every((value, at) => Math.abs(value - (there?.[at] ?? Number.NaN)) < 0.3)
      );
    };
    const between = (one: Awaited<ReturnType<typeof look>>, other: typeof one) =>
      one.length === other.length
        ? one.flatMap(({ name, lines }, place) =>
            lines.flatMap((line, at) =>
              isAlike(line, other[place]?.lines[at])
                ? []
                : [`${name} ${line} became ${other[place]?.lines[at]}`],
            ),
          )
        : [`${one.length} elements became ${other.length}`];

    let before = await look();
    const found: string[] = [];
    for (const sheet of sheets) {
      await wear(sheet);
      const under = await look();
      let lines = between(before, under);
      if (lines.length > 0) {
        // Something may have come meanwhile: it counts only where it goes with the sheet.
        await wear(plain);
        before = await look();
        await wear(sheet);
        lines = between(before, await look());
      }
      found.push(...lines.map((line) => `${sheet}: ${line}`));
    }
    await wear(plain);
    return found;
  }, sheets);
}
