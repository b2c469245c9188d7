import { render } from "preact";
import { firstSheet } from "../../../src/panel/frame/index.ts";
import { createPicture } from "../../../src/panel/pictures/index.ts";
import pictureSheet from "../../../src/panel/pictures/pictures.css?inline";
import { drawingsIn } from "./drawings.ts";

const asked = new URLSearchParams(location.search);
const drawings = drawingsIn(asked.get("locale") ?? "en-GB");
const wanted = new RegExp(asked.get("id") ?? ".");
const Picture = createPicture(drawings);

const own = `.sheet { display: grid; grid-template-columns: repeat(auto-fill, ${asked.get("width") ?? 288}px); gap: 8px; padding: 8px }
figcaption { font-size: 12px }`;
const root = document.body.appendChild(document.createElement("div")).attachShadow({ mode: "open" });
root.adoptedStyleSheets = [firstSheet, pictureSheet, own].map((rules) => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rules);
  return sheet;
});
render(
  <div class="panel sheet">
    {[...drawings.known.keys()]
      .filter((id) => wanted.test(id))
      .map((id) => (
        <figure key={id}>
          <Picture id={id} />
          <figcaption>{id}</figcaption>
        </figure>
      ))}
  </div>,
  root,
);
