import { render } from "preact";
import { act } from "preact/test-utils";
import { createLaterScreens } from "../../src/embed/later-screens.ts";
import * as care from "../../src/panel/care/index.ts";
import { Panel, type Screens } from "../../src/panel/frame/index.ts";
import { createLiveBar, createLiveCards } from "../../src/panel/live/index.ts";
import { screens } from "../../src/panel/screens/index.ts";
import { createActions, type Services, type View } from "../../src/turn/index.ts";
import { servicesFor } from "./gallery/services.ts";
import { viewIn } from "./regions.ts";
import { textsOf } from "./texts.ts";

const sheet = {} as CSSStyleSheet;
const live = { LiveBar: createLiveBar(sheet), LiveCards: createLiveCards(sheet) };

export const allScreens: Screens = {
  ...screens,
  ...createLaterScreens(
    async () => live,
    async () => care,
  ),
  picture: ({ id }) => <img alt={id} />,
};

type Given = {
  services?: Partial<Services>;
  screens?: Screens | null;
  locale?: "en-GB" | "en-US";
  region?: string;
};

/** A panel in the document, with what a hand and an eye can do to it. */
export async function mount(view: View, given: Given = {}) {
  const root = document.createElement("div");
  document.body.replaceChildren(root);
  const calls: unknown[][] = [];
  const actions = createActions((name, given) => void calls.push([name, ...given]));
  let shown = given;
  const services = () => ({ ...servicesFor(""), ...shown.services });
  const show = (next: View, changed: Given = {}) =>
    act(() => {
      shown = { ...shown, ...changed };
      render(
        <Panel
          view={viewIn(shown.region ? `en-${shown.region}` : (shown.locale ?? "en-GB"), next)}
          actions={actions}
          services={services()}
          texts={textsOf(shown.locale ?? "en-GB")}
          screens={shown.screens === undefined ? allScreens : shown.screens}
        />,
        root,
      );
    });
  await show(view);

  const all = <E extends Element>(selector: string) => [...root.querySelectorAll<E & HTMLElement>(selector)];
  const nameOf = (element: Element) =>
    (element.getAttribute("aria-label") ?? element.textContent ?? "").replace(/\s+/g, " ").trim();
  const one = <E extends Element>(selector: string, name: string | RegExp) => {
    const found = all<E>(selector).find((element) =>
      typeof name === "string" ? nameOf(element) === name : name.test(nameOf(element)),
    );
    if (!found) throw new Error(`No ${selector} "${name}" among: ${all(selector).map(nameOf).join(" | ")}`);
    return found;
  };
  const field = (label: string) => {
    const { htmlFor } = one<HTMLLabelElement>("label", label);
    return root.querySelector(`[id="${htmlFor}"]`) as HTMLInputElement;
  };
  const hand = {
    tap: (name: string | RegExp) => act(() => one<HTMLButtonElement>("button", name).click()),
    /** Picks a radio or ticks a box by its label. */
    pick: (label: string) =>
      act(() => {
        one<HTMLLabelElement>("label", label).querySelector("input")?.click();
      }),
    type: (label: string, typed: string) =>
      act(() => {
        const input = field(label);
        input.value = typed;
        input.dispatchEvent(new Event(input.localName === "select" ? "change" : "input", { bubbles: true }));
      }),
    slide: (to: number) =>
      act(() => {
        const slider = root.querySelector('[type="range"]') as HTMLInputElement;
        slider.value = `${to}`;
        slider.dispatchEvent(new Event("input", { bubbles: true }));
      }),
    /** Lets promises that are already settled have their say. */
    settle: () =>
      act(async () => {
        for (let turn = 0; turn < 9; turn += 1) await Promise.resolve();
      }),
  };
  const eye = {
    text: () => (root.textContent ?? "").replace(/\s+/g, " "),
    button: (name: string | RegExp) => one<HTMLButtonElement>("button", name),
    /** All but the one that sends typed words. */
    buttons: () => all("button").flatMap((one) => (one.closest(".say") ? [] : nameOf(one))),
    field,
    focused: () => document.activeElement as HTMLElement,
    /** What is told beside a field, by its aria-describedby. */
    told: (label: string) => {
      const id = field(label).getAttribute("aria-describedby");
      return id ? (root.querySelector(`[id="${id}"]`)?.textContent ?? "") : "";
    },
    all,
  };
  return { root, calls, show, ...hand, ...eye };
}
