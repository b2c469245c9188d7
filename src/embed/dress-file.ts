import { complain } from "../loading/index.ts";
import type { Screens } from "../panel/frame/index.ts";
import { createFile } from "./later-file.ts";

/** What only shops with a look, words or a picture of their own fetch. */
export const getDress = createFile<typeof import("./dress.ts")>(
  "dress",
  () => import("./dress.ts"),
  (file) => Boolean(file.dress),
);

/** What a shop may set on the tag or around it. */
const properties = "ground card tint text quiet-text accent on-accent edge font radius space".split(" ");

/**
 * Dresses one panel as its shop has it, and again when that may have changed. A shop that sets nothing fetches nothing.
 * @param picture of the shop, at the turn that greets
 */
export function createDress(host: HTMLElement, picture: { src: string; alt: string } | null = null) {
  const sheet = new CSSStyleSheet();
  const isSet = () =>
    properties.some((name) => getComputedStyle(host).getPropertyValue(`--fridgeside-${name}`).trim());
  let file: Awaited<ReturnType<typeof getDress>> | null = null;
  let greeting: Screens["before"] | undefined;
  let isWorn = false;
  let isDressed = false;
  const look = async () => {
    if (!isWorn || !(isDressed || isSet())) return;
    isDressed = true;
    const dressing = await getDress().catch(() => null);
    if (dressing) dressing.dress(host, sheet, complain);
    else complain("what checks the shop's colours could not be loaded. The panel has its own.");
  };
  const observer = new MutationObserver(look);
  return {
    /** Brings what is needed, so that the panel is dressed from its first moment on. Never rejects. */
    async bring(): Promise<void> {
      if (picture || isSet()) file = await getDress().catch(() => null);
    },
    /** The panel's screens, with the shop's picture where it greets. */
    screens<All extends Pick<Screens, "before">>(all: All, isGreeting: boolean): All {
      const lost = () =>
        complain(`attribute "picture": ${picture?.src} can't be shown. Its place stays empty.`);
      if (picture) greeting ??= file?.createGreeting(all.before, picture, lost);
      return isGreeting && greeting ? { ...all, before: greeting } : all;
    },
    /** Puts the rules on, the last ones of the panel's tree. */
    wear(root: ShadowRoot): void {
      root.adoptedStyleSheets.push(sheet);
      isWorn = true;
      observer.observe(host, { attributeFilter: ["theme", "data-fs-page", "class", "style"] });
      void look();
    },
    look,
    stop: () => observer.disconnect(),
  };
}
