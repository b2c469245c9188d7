import { render } from "preact";
import { createLaterScreens } from "../../../src/embed/later-screens.ts";
import { firstSheet, Panel } from "../../../src/panel/frame/index.ts";
import { createPicture } from "../../../src/panel/pictures/index.ts";
import pictureSheet from "../../../src/panel/pictures/pictures.css?inline";
import { laterSheet, screens } from "../../../src/panel/screens/index.ts";
import { createActions } from "../../../src/turn/index.ts";
import { viewIn } from "../regions.ts";
import { textsOf } from "../texts.ts";
import { drawingsIn } from "./drawings.ts";
import { fixtures } from "./fixtures.ts";
import { servicesFor } from "./services.ts";

const asked = new URLSearchParams(location.search);
const theme = asked.get("theme");
const name = asked.get("fixture") ?? "first";
const view = fixtures[name];
if (!view) throw new Error(`No fixture "${name}". There are: ${Object.keys(fixtures).join(", ")}`);

const locale = asked.get("locale") ?? "en-GB";
const Picture = createPicture(drawingsIn(locale));
const texts = textsOf(locale);

const host = document.querySelector("#panel") as HTMLElement;
if (theme) host.setAttribute("theme", theme);
document.body.className = `${theme === "dark" ? "dark" : ""} ${asked.has("hostile") ? "hostile" : ""}`;
const root = host.attachShadow({ mode: "open" });
root.adoptedStyleSheets = [firstSheet, laterSheet, pictureSheet].map((rules) => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rules);
  return sheet;
});

const never = () => new Promise<never>(() => {});
const services = servicesFor(name);
const calls: [string, unknown[]][] = [];
const actions = createActions((action, given) => {
  calls.push([action, given]);
  console.log(action, JSON.stringify(given));
});
render(
  <Panel
    view={viewIn(locale, view)}
    actions={actions}
    services={services}
    texts={texts}
    screens={
      name === "waiting-for-engine"
        ? null
        : {
            ...screens,
            ...createLaterScreens(never, never),
            picture: Picture,
          }
    }
  />,
  root,
);
