import type { FittedPart } from "../session/index.ts";
import { toWebAddress } from "./web-address.ts";

/**
 * Leaves out links and pictures that lead to other hosts than the shop's own: a feed of many suppliers must not lead a customer
 * away. A host covers those below it, so `shop.example` allows `www.shop.example`.
 * @param hosts host names without a port
 */
export function keepOwnLinks(fit: FittedPart, hosts: readonly string[]): FittedPart {
  if (fit.kind !== "part") return fit;
  const isOwn = (link: string) => {
    const address = toWebAddress(link, link);
    const hostname = address && new URL(address).hostname;
    return hostname && hosts.some((host) => hostname === host || hostname.endsWith(`.${host}`));
  };
  const checked = <Part extends { link?: string; picture?: string }>({ link, picture, ...part }: Part) =>
    ({
      ...part,
      ...(link && isOwn(link) ? { link } : {}),
      ...(picture && isOwn(picture) ? { picture } : {}),
    }) as Part;
  return { ...fit, part: checked(fit.part), alternatives: fit.alternatives.map(checked) };
}

/** The hosts that a shop's links may lead to: the page's, those that it fetches from, and those that it names. */
export function hostsOf(
  page: string,
  fetched: readonly (string | null)[],
  named: readonly string[],
): string[] {
  const hosts = [page, ...fetched].flatMap((address) => (address ? [new URL(address).hostname] : []));
  return [...hosts, ...named].filter(Boolean);
}
