import type { Complain } from "../loading/index.ts";
import { toWebAddress } from "../loading/index.ts";
import { nextTask } from "../loading/pace/index.ts";
import type { FoundPart } from "../turn/index.ts";

/**
 * Leaves out links and pictures that lead to other hosts than the shop's own: a feed of many suppliers must not lead a customer
 * away. A host covers those below it, so `shop.example` allows `www.shop.example`.
 * @param hosts host names without a port
 */
export function keepOwnLinks(fit: FoundPart, hosts: readonly string[]): FoundPart {
  if (fit.kind !== "part") return fit;
  const isOwn = (link: string) => leadsTo(link, hosts);
  const checked = <Part extends { link?: string; picture?: string }>({ link, picture, ...part }: Part) =>
    ({
      ...part,
      ...(link && isOwn(link) ? { link } : {}),
      ...(picture && isOwn(picture) ? { picture } : {}),
    }) as Part;
  return { ...fit, part: checked(fit.part), alternatives: fit.alternatives.map(checked) };
}

function leadsTo(link: string, hosts: readonly string[]): boolean {
  const address = toWebAddress(link, link);
  const hostname = address && new URL(address).hostname;
  return Boolean(hostname) && hosts.some((host) => hostname === host || hostname?.endsWith(`.${host}`));
}

/** Parts looked through in one step: an address takes a slow phone some ten microseconds. */
const STEP = 200;

/** Says how many links and pictures of these parts lead to other hosts, with one of them; in short steps. */
export async function complainOfForeignLinks(
  parts: readonly { link?: string; picture?: string }[],
  hosts: readonly string[],
  complain: Complain,
): Promise<void> {
  let count = 0;
  let example = "";
  for (const [index, { link, picture }] of parts.entries()) {
    if (index % STEP === STEP - 1) await nextTask();
    for (const address of [link, picture]) {
      if (!address || leadsTo(address, hosts)) continue;
      count += 1;
      example ||= address.slice(0, 200);
    }
  }
  if (count > 0)
    complain(
      `${count} links or pictures lead to other hosts than the shop's own and are left out, for example ${example}. ` +
        'Name hosts that may be led to in "link-hosts".',
      "foreign links",
    );
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
