import { Window } from "happy-dom";
import { beforeEach, describe, expect, test } from "vitest";
import { loadPanel, type PanelHome } from "../../src/package/index.ts";

const address = "/fridgeside/fridgeside.en-GB.js";
let page: Window;
let home: PanelHome;
const scripts = () => [...page.document.querySelectorAll("script")];

beforeEach(() => {
  page = new Window({ url: "https://shop.example/help/", settings: { disableJavaScriptFileLoading: true } });
  home = { document: page.document, customElements: page.customElements } as unknown as PanelHome;
});

describe("loading the panel from a shop's own script", () => {
  test("adds one module script, however often it is asked for", () => {
    for (const each of [address, address, `https://shop.example${address}`]) void loadPanel(each, { home });
    expect(scripts().map(({ src, type }) => [src, type])).toEqual([
      [`https://shop.example${address}`, "module"],
    ]);
  });

  test("adds none where the page's own tag has it already", () => {
    const tag = page.document.createElement("script");
    tag.src = `https://shop.example${address}`;
    page.document.head.append(tag);
    void loadPanel(address, { home });
    expect(scripts()).toEqual([tag]);
  });

  test("has the browser check the hash that it is given, also from another origin", () => {
    void loadPanel("https://cdn.example/f.js", { integrity: "sha384-abc", home });
    expect(scripts().map((script) => [script.integrity, script.crossOrigin])).toEqual([
      ["sha384-abc", "anonymous"],
    ]);
  });

  test("is done as soon as the tag is known", async () => {
    const loaded = loadPanel(address, { home });
    page.customElements.define("fridgeside-panel", class extends page.HTMLElement {});
    await expect(loaded).resolves.toBeUndefined();
  });

  test("tells of an address that is none", () => {
    expect(() => loadPanel("https://", { home })).toThrow(TypeError);
  });

  test("does nothing on a server", () => {
    expect(loadPanel(address, { home: null })).toBeInstanceOf(Promise);
    expect(typeof document).toBe("undefined");
  });
});
