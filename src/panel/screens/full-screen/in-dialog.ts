import { isBounce, type Tap } from "../../frame/index.ts";

/**
 * A panel that fills the window. `close` puts it back where it was, and `goThere` shows it there once more. Where the page
 * has moved on, what is scrolled to or has the focus is the page's own matter.
 */
export type InDialog = { close(hasMoved: boolean): void; goThere(): void };

type Words = { title: string; close: string; locale: string; direction: string };

/** `close`: by its button or Escape; `back`: by a phone that asks the dialog itself; `closed`: whatever has closed it. */
type Told = { close(): void; back(): void; closed(): void };

const cross = "M6 6l12 12M18 6L6 18";

/**
 * Moves a panel, as it is, into a dialog that fills the window: nothing of it is drawn anew, so that what was typed,
 * ticked or started goes on. The page behind keeps its place, and does not scroll.
 */
export function openInDialog(panel: HTMLElement, words: Words, told: Told): InDialog {
  const root = panel.getRootNode() as ShadowRoot;
  const page = document.documentElement;
  const [x, y] = [scrollX, scrollY];
  const heading = headingOf(panel);
  const place = document.createElement("div");
  place.style.setProperty("height", `${panel.offsetHeight}px`);
  const dialog = createDialog(words, told.close);
  panel.replaceWith(place);
  dialog.append(panel);
  root.append(dialog);
  const unlock = lock(page);
  dialog.showModal();
  headingOf(panel)?.focus();

  const press = (event: KeyboardEvent) => {
    if (event.key !== "Escape" || event.defaultPrevented || event.isComposing) return;
    event.preventDefault();
    told.close();
  };
  document.addEventListener("keydown", press);
  // A field for a photo has such an event too.
  dialog.addEventListener("cancel", (event) => {
    if (event.target !== dialog) return;
    event.preventDefault();
    told.back();
  });
  dialog.addEventListener("close", (event) => event.target === dialog && told.closed());

  return {
    close(hasMoved) {
      document.removeEventListener("keydown", press);
      const { activeElement } = root;
      dialog.close();
      // Where the panel itself is gone, its place goes.
      if (panel.parentNode === dialog) place.replaceWith(panel);
      else place.remove();
      dialog.remove();
      unlock();
      if (hasMoved) return;
      const focused = panel.contains(activeElement) ? activeElement : panel.querySelector(".menu");
      (headingOf(panel) === heading ? (focused as HTMLElement) : headingOf(panel))?.focus({
        preventScroll: true,
      });
      this.goThere();
    },
    goThere() {
      // The page has taken the panel away.
      if (!panel.isConnected) return;
      scrollTo({ left: x, top: y, behavior: "instant" });
      if (headingOf(panel) !== heading) headingOf(panel)?.scrollIntoView({ block: "start" });
    },
  };
}

/** Each turn has a heading of its own. */
const headingOf = (panel: HTMLElement) => panel.querySelector("h2");

function createDialog({ title, close, locale, direction }: Words, act: () => void): HTMLDialogElement {
  const dialog = document.createElement("dialog");
  for (const [name, value] of Object.entries({
    lang: locale,
    dir: direction,
    "aria-label": title,
    // Else some phones' Back closes it, and is not heard of otherwise.
    closedby: "none",
  }))
    dialog.setAttribute(name, value);
  const button = document.createElement("button");
  button.type = "button";
  button.setAttribute("aria-label", close);
  const draw = (name: string) => document.createElementNS("http://www.w3.org/2000/svg", name);
  const [svg, path] = [draw("svg"), draw("path")];
  svg.setAttribute("viewBox", "0 0 24 24");
  svg.setAttribute("aria-hidden", "true");
  path.setAttribute("d", cross);
  svg.append(path);
  button.append(svg);
  button.addEventListener("click", (tap) => {
    ignoreBounce(tap);
    act();
  });
  dialog.append(button);
  return dialog;
}

/** The second tap of a double tap would fall on whatever the page has there. */
function ignoreBounce(first: MouseEvent): void {
  const tapOf = ({ timeStamp: at, clientX: x, clientY: y }: MouseEvent): Tap => ({ at, x, y });
  const hear = (next: MouseEvent) => {
    if (isBounce(tapOf(first), tapOf(next))) {
      next.stopPropagation();
      next.preventDefault();
    } else document.removeEventListener("click", hear, true);
  };
  document.addEventListener("click", hear, true);
}

/** Keeps a page from scrolling; returns a function that ends it, and leaves the page's own style as it was. */
function lock(page: HTMLElement): () => void {
  const own = page.getAttribute("style");
  const [value, priority] = [
    page.style.getPropertyValue("overflow"),
    page.style.getPropertyPriority("overflow"),
  ];
  page.style.setProperty("overflow", "hidden", "important");
  return () => {
    page.style.removeProperty("overflow");
    if (value) page.style.setProperty("overflow", value, priority);
    if (own === null && page.getAttribute("style") === "") page.removeAttribute("style");
  };
}
