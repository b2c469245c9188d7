import { h, render } from "preact";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { ReadingScreen } from "../../instruments/screens.tsx";
import { firstSheet, Panel, type Screens } from "../../panel/frame/index.ts";
import { EndingScreen } from "../../panel/screens/ending/index.ts";
import { laterSheet, screens as soon } from "../../panel/screens/index.ts";
import { ModelScreen } from "../../panel/screens/model/index.ts";
import { WaitScreen } from "../../panel/screens/wait/index.ts";
import { createActions, type Services, type Texts, type View } from "../../turn/index.ts";
import mirrorSheet from "./mirror.css?inline";

/** The screens of all turns; the field, the menu's later entries and the machine beside the thread stay at home. */
const screens = {
  ...soon,
  reading: ReadingScreen,
  model: ModelScreen,
  wait: WaitScreen,
  ending: EndingScreen,
};

/** Nothing that is tapped in a mirror does anything, whatever the browser makes of `inert`. */
const noActions = createActions(() => {});

const never = new Promise<never>(() => {});

const noServices = (now: () => string): Services => ({
  canLookUp: () => false,
  takePageModel: () => null,
  findModel: () => never,
  showPhoto: async () => null,
  care: () => never,
  forget: () => {},
  partFor: () => never,
  basket: { stateOf: () => "new", ask: () => {}, askAgain: () => {}, watch: () => () => {} },
  draft: { read: () => ({}), keep: () => {} },
  now,
  keepAwake: async () => () => {},
  signal: () => {},
  words: () => never,
  said: () => [],
  carry: () => never,
  handover: () => never,
  shopHelp: { name: "", link: null },
  basketLink: null,
  live: null,
});

type Props = {
  view: View;
  texts: Texts;
  picture: Screens["picture"];
  /** The place of the answer that is pointed at among the turn's own, or -1. */
  pointed: number;
  now(): string;
};

/**
 * The householder's screen by the panel's own frame, in a shadow root of its own with the panel's own rules. It is inert:
 * it can be read and scrolled, and not one of its actions is wired to anything.
 */
export function Mirror({ view, texts, picture, pointed, now }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const shown = useRef("");
  useLayoutEffect(() => {
    const { current } = host;
    if (!current) return;
    const root = current.shadowRoot ?? current.attachShadow({ mode: "open" });
    if (!root.adoptedStyleSheets?.length) root.adoptedStyleSheets = sheets();
    const props = { view, actions: noActions, services: noServices(now), texts };
    render(h(Panel, { ...props, screens: { ...screens, picture } }), root);
    const answers = [...root.querySelectorAll(".dock > .answers > button")];
    for (const [place, answer] of answers.entries()) answer.classList.toggle("pointed", place === pointed);
    const at = `${view.turn?.turn} ${pointed}`;
    if (shown.current !== at)
      bringIntoSight(current.parentElement, answers[pointed] ?? root.querySelector("h2"));
    shown.current = at;
  });
  useEffect(
    () => () => {
      if (host.current?.shadowRoot) render(null, host.current.shadowRoot);
    },
    [],
  );
  return <div ref={host} class="mirrored" inert />;
}

/** The mirror alone is scrolled, and not the page that it is on. */
function bringIntoSight(box: HTMLElement | null, part: Element | null | undefined): void {
  if (!box || !part) return;
  const [outer, inner] = [box.getBoundingClientRect(), part.getBoundingClientRect()];
  if (inner.top < outer.top || inner.bottom > outer.bottom)
    box.scrollTop += inner.top - outer.top - outer.height / 3;
}

let made: CSSStyleSheet[] | null = null;
const sheets = () => {
  made ??= [firstSheet, laterSheet, mirrorSheet].map((rules) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(rules);
    return sheet;
  });
  return made;
};
