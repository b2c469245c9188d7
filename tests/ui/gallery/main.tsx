import { render } from "preact";
import gbMeasure from "../../../locales/en-GB/measure.yaml";
import gbPart from "../../../locales/en-GB/part.yaml";
import gbUi from "../../../locales/en-GB/ui.yaml";
import usMeasure from "../../../locales/en-US/measure.yaml";
import usPart from "../../../locales/en-US/part.yaml";
import usUi from "../../../locales/en-US/ui.yaml";
import { firstSheet, Panel } from "../../../src/ui/chat/index.ts";
import { laterSheet, screens } from "../../../src/ui/measure/index.ts";
import { icePathSheet } from "../../../src/ui/pictures/index.ts";
import { textsFrom } from "../texts.ts";
import { fixtures } from "./fixtures.ts";
import { Picture } from "./picture.tsx";
import { servicesFor } from "./services.ts";

const asked = new URLSearchParams(location.search);
const theme = asked.get("theme");
const name = asked.get("fixture") ?? "first";
const view = fixtures[name];
if (!view) throw new Error(`No fixture "${name}". There are: ${Object.keys(fixtures).join(", ")}`);

const british = { ui: gbUi, measure: gbMeasure, part: gbPart };
const american = { ui: usUi, measure: usMeasure, part: usPart };
const texts = textsFrom(asked.get("locale") === "en-US" ? american : british, british);

const host = document.querySelector("#panel") as HTMLElement;
if (theme) host.setAttribute("theme", theme);
document.body.className = `${theme === "dark" ? "dark" : ""} ${asked.has("hostile") ? "hostile" : ""}`;
const root = host.attachShadow({ mode: "open" });
root.adoptedStyleSheets = [firstSheet, icePathSheet, laterSheet].map((rules) => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rules);
  return sheet;
});

const calls: [string, unknown[]][] = [];
const actions = new Proxy({} as Parameters<typeof Panel>[0]["actions"], {
  get: (_, action: string) => (...given: unknown[]) => {
    calls.push([action, given]);
    console.log(action, JSON.stringify(given));
  },
});
render(
  <Panel
    view={view}
    actions={actions}
    services={servicesFor(name)}
    texts={texts}
    screens={name === "waiting-for-engine" ? null : { ...screens, picture: Picture }}
  />,
  root,
);
