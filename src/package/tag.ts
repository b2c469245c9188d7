import type { FridgesideEventName, FridgesideEvents } from "../insight/index.ts";

/** The events by name, as `addEventListener` hands them on. */
export type FridgesideEventMap = { [Name in FridgesideEventName]: CustomEvent<FridgesideEvents[Name]> };

/**
 * What the tag takes, as a page writes it; README has each attribute's meaning. A value that can't be used is ignored,
 * with one sentence in the console.
 */
export type PanelAttributes = {
  language?: string;
  theme?: "light" | "dark" | "auto";
  catalogue?: string;
  lookup?: string;
  flows?: string;
  model?: string;
  "shop-name"?: string;
  "help-link"?: string;
  "basket-link"?: string;
  "link-hosts"?: string;
  "session-name"?: string;
  label?: string;
  "plate-reader"?: string;
  relay?: string;
  "help-hours"?: string;
  "help-zone"?: string;
  words?: string;
  picture?: string;
  "picture-alt"?: string;
  insight?: string;
  consent?: "yes" | "no";
};

/** The tag as scripts see it. All of it is set by attributes, and all that it tells comes by events. */
export interface PanelElement extends HTMLElement {
  /** Whether the person has agreed to anonymous outcomes (`insight`). */
  consent: boolean;
  addEventListener<Name extends keyof FridgesideEventMap>(
    name: Name,
    listener: (this: PanelElement, event: FridgesideEventMap[Name]) => void,
    options?: boolean | AddEventListenerOptions,
  ): void;
  addEventListener<Name extends keyof HTMLElementEventMap>(
    name: Name,
    listener: (this: PanelElement, event: HTMLElementEventMap[Name]) => void,
    options?: boolean | AddEventListenerOptions,
  ): void;
  addEventListener(
    name: string,
    listener: EventListenerOrEventListenerObject,
    options?: boolean | AddEventListenerOptions,
  ): void;
}

declare global {
  interface HTMLElementEventMap extends FridgesideEventMap {}
  interface HTMLElementTagNameMap {
    "fridgeside-panel": PanelElement;
  }
}
