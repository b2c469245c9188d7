import { complain } from "../loading/index.ts";
import { createFile } from "./later-file.ts";

/** What only shops with a look or words of their own fetch. */
export const getDress = createFile<typeof import("./dress.ts")>(
  "dress",
  () => import("./dress.ts"),
  (file) => Boolean(file.dress),
);

/** What a shop may set on the tag or around it. */
const properties = "ground card tint text quiet-text accent on-accent edge font radius space".split(" ");

/** Dresses one panel as its shop has it, and again when that may have changed. A shop that sets nothing fetches nothing. */
export function createDress(host: HTMLElement) {
  const sheet = new CSSStyleSheet();
  const isSet = () =>
    properties.some((name) => getComputedStyle(host).getPropertyValue(`--fridgeside-${name}`).trim());
  let isWorn = false;
  let isDressed = false;
  const look = async () => {
    if (!isWorn || !(isDressed || isSet())) return;
    isDressed = true;
    const file = await getDress().catch(() => null);
    if (file) file.dress(host, sheet, complain);
    else complain("what checks the shop's colours could not be loaded. The panel has its own.");
  };
  const observer = new MutationObserver(look);
  return {
    /** Brings what is needed, so that the panel is dressed from its first moment on. Never rejects. */
    async bring(): Promise<void> {
      if (isSet()) await getDress().catch(() => null);
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
