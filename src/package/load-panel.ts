/** What of a page loading needs; nothing of it is there where pages are written on a server. */
export type PanelHome = {
  document: Pick<Document, "createElement" | "head" | "baseURI" | "scripts">;
  customElements: Pick<CustomElementRegistry, "whenDefined">;
};

/**
 * Loads the panel's script once a page, however often this is called. On a server it does nothing.
 * @param address of one of the files that `fridgeside build` wrote, such as `/fridgeside/fridgeside.en-GB.js`; absolute,
 * or from the page's address. It and what lies beside it must not go through a bundler: it finds its other files by
 * its own address.
 * @param integrity the file's hash as the build's `integrity.json` has it (W3C, Subresource Integrity)
 * @returns resolves as soon as the tag is known; never on a server, and not before the script has come
 * @throws TypeError where the address is none
 */
export function loadPanel(
  address: string,
  { integrity, home = thisPage() }: { integrity?: string; home?: PanelHome | null } = {},
): Promise<void> {
  if (!home) return new Promise(() => {});
  const { document, customElements } = home;
  const src = new URL(address, document.baseURI).href;
  if (![...document.scripts].some((script) => script.src === src)) {
    const script = document.createElement("script");
    script.type = "module";
    script.src = src;
    if (integrity) {
      script.integrity = integrity;
      script.crossOrigin = "anonymous";
    }
    document.head.append(script);
  }
  return customElements.whenDefined("fridgeside-panel").then(() => {});
}

const thisPage = (): PanelHome | null =>
  typeof document === "undefined" || typeof customElements === "undefined"
    ? null
    : { document, customElements };
