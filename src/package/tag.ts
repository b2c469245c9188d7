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
  "plate-reader"?: string;
  relay?: string;
  "help-hours"?: string;
  "help-zone"?: string;
};

/** The tag as scripts see it. All of it is set by attributes, and all that it tells comes by events. */
export interface PanelElement extends HTMLElement {
  addEventListener<Name extends PanelEventName>(
    name: Name,
    listener: (this: PanelElement, event: CustomEvent<PanelEvents[Name]>) => void,
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

/** The `detail` of each event. All of them bubble, and leave the shadow tree. */
export type PanelEvents = {
  /** A part is wanted in the basket. The page calls one of the two functions when it knows. */
  "fridgeside-basket": {
    number: string;
    name: string;
    model: string;
    serial?: string;
    variant?: string;
    added(): void;
    failed(): void;
  };
  /** The search has ended; `cause`, `part` (its kind) and `model` are null where there is none. */
  "fridgeside-ended": {
    outcome: "fixed" | "part" | "professional" | "stopped";
    cause: string | null;
    part: string | null;
    model: string | null;
  };
  /** Somebody wants a person; one was let in; one is gone. No names and nothing typed. */
  "fridgeside-help-asked": { by: string; why: string };
  "fridgeside-help-joined": { by: string; why: string };
  "fridgeside-help-left": { by: string; why: string };
};

export type PanelEventName = keyof PanelEvents;

declare global {
  interface HTMLElementTagNameMap {
    "fridgeside-panel": PanelElement;
  }
  interface HTMLElementEventMap extends PanelEventMap {}
}

type PanelEventMap = { [Name in PanelEventName]: CustomEvent<PanelEvents[Name]> };
