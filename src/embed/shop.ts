import { complain, createShopCatalogue, type ShopCatalogue } from "../loading/index.ts";
import type { PhotoGiven } from "../turn/index.ts";
import { complainOfForeignLinks, hostsOf, keepOwnLinks } from "./link-hosts.ts";
import type { Options } from "./options.ts";
import { createShopLookup, lookupAt } from "./shop-lookup.ts";

/** By address: a catalogue is fetched and parsed once, however often a tag comes and goes. */
const catalogues = new Map<string | null, ShopCatalogue>();

/** What a shop sells, in a catalogue or asked for by code, with links to its own hosts only. */
export type Shop = ReturnType<typeof openShop>;

/** Only who comes to a part needs it: it is a file of its own. @param host whose function `lookup` a page may set */
export function openShop(host: HTMLElement, options: Options) {
  const { lookup } = options;
  const hosts = hostsOf(document.baseURI, [options.catalogue, lookup, options.helpLink], options.linkHosts);
  const lookAtLinks = linksWatchedFor(hosts);
  const files = catalogueAt(options.catalogue, lookAtLinks);
  const byLookup = createShopLookup((code) => {
    const own = ownLookup(host);
    return own ? own(code) : lookup && lookupAt(lookup, get)(code);
  });
  const shop = () => (lookup || ownLookup(host) ? byLookup : files);
  return {
    isRefused: files.isRefused,
    warmUp: () => shop().warmUp(),
    showPhoto: async (place: object, given: PhotoGiven) => {
      const folder = host.getAttribute("plate-reader");
      return folder ? (await import("./photo.ts")).showPhoto(place as Element, folder, given) : null;
    },
    findModel: (typed: string) => shop().findModel(typed),
    partFor: async (...asked: Parameters<ShopCatalogue["partFor"]>) => {
      const fit = await shop().partFor(...asked);
      if (fit.kind === "part") lookAtLinks([fit.part, ...fit.alternatives]);
      return keepOwnLinks(fit, hosts);
    },
  };
}

const get: typeof fetch = (address, settings) => fetch(address, settings);

// Both apart from any tag: what a catalogue holds on to lives as long as the page.
function catalogueAt(address: string | null, seen: ReturnType<typeof linksWatchedFor>): ShopCatalogue {
  const files = catalogues.get(address) ?? createShopCatalogue(address, get, { complain, seen });
  catalogues.set(address, files);
  return files;
}

function linksWatchedFor(hosts: ReturnType<typeof hostsOf>) {
  return (parts: Parameters<typeof complainOfForeignLinks>[0]) =>
    void complainOfForeignLinks(parts, hosts, complain);
}

function ownLookup(host: HTMLElement) {
  const { lookup } = host as { lookup?: unknown };
  return typeof lookup === "function" ? lookup : null;
}
