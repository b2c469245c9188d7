import { h } from "preact";
import type { Flow } from "../flow/index.ts";
import {
  createTexts,
  endingOf,
  metaOf,
  type Resource,
  type Services,
  type Texts,
  type View,
} from "../session/index.ts";
import { laterSheet, screens } from "../ui/measure/index.ts";
import { Picture, pictureSheet } from "../ui/pictures/later.ts";
import { askBasket } from "./basket.ts";
import { localNow } from "./clock.ts";
import { createController } from "./controller.ts";
import { keepAwake, signal } from "./device.ts";
import type { LogStore } from "./log-store.ts";
import type { Options } from "./options.ts";
import { createShopCatalogue } from "./shop-catalogue.ts";

/** The rules of everything behind the first question. */
export const laterRules = `${laterSheet}${pictureSheet}`;

/** How often a shown wait looks at the clock; its end is also looked for whenever the page comes to the front. */
const LOOK_MS = 30_000;

/** What the element shows once the engine runs. */
export type Running = ReturnType<typeof startEngine>;

/** Starts a session in the browser: everything behind the first question. */
export function startEngine(
  host: HTMLElement,
  options: Options,
  { flow, resources }: { flow: Flow; resources: Record<string, Resource> },
  store: LogStore,
  show: (view: View) => void,
) {
  const texts: Texts = createTexts(resources, options.language, flow.limits);
  const controller = createController({
    flow,
    texts,
    store,
    model: options.model,
    now: localNow,
    show,
    ended: (session) => {
      const { outcome } = metaOf(session);
      const { causeId, part } = endingOf(session, outcome ?? "stopped", texts);
      const detail = { outcome, cause: causeId, part: part?.kind ?? null, model: part?.model ?? null };
      host.dispatchEvent(new CustomEvent("fridgeside-ended", { detail, bubbles: true, composed: true }));
    },
  });
  const catalogue = createShopCatalogue(options.catalogue, (address, settings) => fetch(address, settings));
  catalogue.warmUp();
  const services: Services = {
    findModel: catalogue.findModel,
    partFor: catalogue.partFor,
    addToBasket: (part) => askBasket(host, part),
    now: localNow,
    keepAwake,
    signal,
    shopHelp: { name: options.shopName, link: options.helpLink },
  };
  const timer = setInterval(controller.tick, LOOK_MS);
  const lookAtConnection = () => controller.setOffline(!navigator.onLine);
  document.addEventListener("visibilitychange", controller.tick);
  addEventListener("online", lookAtConnection);
  addEventListener("offline", lookAtConnection);
  const stop = () => {
    clearInterval(timer);
    document.removeEventListener("visibilitychange", controller.tick);
    removeEventListener("online", lookAtConnection);
    removeEventListener("offline", lookAtConnection);
  };
  const picture = ({ id }: { id: string }) => h(Picture, { id, title: texts(`pictures.${id}`) });
  return { actions: controller.actions, services, texts, screens: { ...screens, picture }, stop };
}
