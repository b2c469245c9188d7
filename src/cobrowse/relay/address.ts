import { isIPv6 } from "node:net";

/**
 * The address that a connection counts as. Of IPv6 that is the first half, which is what one household or office gets;
 * else one machine would have as many addresses as it likes.
 * @param direct the address of the socket
 * @param forwarded the header X-Forwarded-For
 * @param proxies how many proxies of ours are in front; each has appended the address that it saw
 */
export function addressOf(direct: string, forwarded: string | undefined, proxies: number): string {
  const seen = proxies > 0 ? (forwarded ?? "").split(",").map((one) => one.trim()) : [];
  const address = seen.at(-proxies) || direct;
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped) return mapped;
  return isIPv6(address) ? firstHalf(address) : address.slice(0, 45);
}

function firstHalf(address: string): string {
  const [start = "", end] = address.replace(/%.*$/, "").split("::");
  const groups = start ? start.split(":") : [];
  const rest = end ? end.split(":") : [];
  const zeros = end === undefined ? 0 : 8 - groups.length - rest.length;
  const all = [...groups, ...Array.from({ length: Math.max(0, zeros) }, () => "0"), ...rest];
  return all
    .slice(0, 4)
    .map((group) => Number.parseInt(group || "0", 16).toString(16))
    .join(":");
}
