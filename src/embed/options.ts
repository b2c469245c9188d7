import { longestCode, normaliseCode, plainText } from "../catalogue/index.ts";
import { toCollectAddress, toRelayAddress, toWebAddress } from "../loading/index.ts";
import { chooseLanguage, matchLanguage, type ReadAttribute } from "../loading/language/index.ts";
import { chooseSessionName } from "./first-options.ts";
import { type HelpHours, isZone, readHelpHours } from "./help-hours.ts";
import { findUnknownNames } from "./known-names.ts";

/** How a shop's page sets the panel up, after the check at the door. */
export type Options = {
  language: string;
  theme: "light" | "dark" | null;
  /** Where the shop's catalogue lies; null means that parts are named by kind only. */
  catalogue: string | null;
  /** An address that is asked for each model code instead; null where there is none. */
  lookup: string | null;
  /** The folder of a shop's own flows, made by `fridgeside pack`; null for the built-in ones. */
  flows: string | null;
  /** As the page has it; it is looked up like a typed one. */
  model: string | null;
  shopName: string;
  helpLink: string | null;
  /** Where the shop's basket is; null where there is no way to it. */
  basketLink: string | null;
  /** Hosts that links of parts may lead to, besides the shop's own. */
  linkHosts: string[];
  /** Keeps two panels on one site apart in storage. */
  sessionName: string;
  /** The relay by which the shop's people can join; null where they can't. */
  relay: string | null;
  /** When they can be asked, and in which time zone; null for always, and for the device's own. */
  helpHours: HelpHours | null;
  helpZone: string | null;
  /** Where anonymous outcomes go once somebody has agreed to that; null for nowhere. */
  insight: string | null;
  /** Where the shop's own words lie; null for ours. */
  words: string | null;
  /** A picture of the shop where it greets, and what it shows; null for none. */
  picture: { src: string; alt: string } | null;
};

/**
 * Reads and checks the tag's attributes. What cannot be used is left at its default and reported in `complaints`,
 * one sentence each, for the developer's console.
 * @param languages the BCP 47 tags that have texts; the first is the fallback
 * @param base the address that relative links start from
 * @param names all attributes that the tag has
 */
export function readOptions(
  read: ReadAttribute,
  inherited: string,
  languages: string[],
  base: string,
  names: readonly string[] = [],
): { options: Options; complaints: string[] } {
  const complaints: string[] = [];
  const complain = (name: string, wants: string, got: string) =>
    complaints.push(`attribute "${name}" must be ${wants}; got "${got.slice(0, 80)}". It is ignored.`);
  const link = (name: string, wants = "a link that starts with http or https", toAddress = toWebAddress) => {
    const typed = read(name);
    if (!typed) return null;
    const safe = toAddress(typed, base);
    if (!safe) complain(name, wants, typed);
    return safe;
  };
  for (const { name, meant } of findUnknownNames(names))
    complaints.push(
      `there is no attribute "${name.slice(0, 80)}". ${meant ? `Is "${meant}" meant? ` : ""}It is ignored.`,
    );
  const wanted = read("language");
  if (wanted && !matchLanguage(wanted, languages))
    complain("language", `one of ${languages.join(", ")}`, wanted);
  const theme = read("theme");
  if (theme && theme !== "light" && theme !== "dark" && theme !== "auto")
    complain("theme", "light, dark or auto", theme);
  const name = read("session-name");
  const sessionName = chooseSessionName(read);
  if (name && sessionName !== name) complain("session-name", "1 to 40 letters, digits, - or _", name);
  const model = read("model");
  const modelFits = !model || normaliseCode(model).kind === "code";
  if (!modelFits) complain("model", `a model code of at most ${longestCode} characters`, model);
  const hosts = (read("link-hosts") ?? "")
    .toLowerCase()
    .split(/[\s,]+/)
    .filter(Boolean);
  const hours = read("help-hours");
  const helpHours = hours ? readHelpHours(hours) : null;
  if (hours && !helpHours)
    complain("help-hours", "opening hours such as Mo-Fr 09:00-17:30, Sa 10:00-14:00", hours);
  const zone = read("help-zone");
  const helpZone = zone && isZone(zone) ? zone : null;
  if (zone && !helpZone) complain("help-zone", "a time zone such as Europe/London", zone);
  const onOwnSite = "an address of the page's own site or one that starts with https, without #";
  const picture = link("picture", onOwnSite, toCollectAddress);
  const wrongHost = hosts.find((host) => !isHost(host));
  if (wrongHost)
    complain("link-hosts", "host names such as shop.example, with blanks between them", wrongHost);
  return {
    complaints,
    options: {
      language: chooseLanguage(read, inherited, languages),
      theme: theme === "light" || theme === "dark" ? theme : null,
      catalogue: link("catalogue"),
      lookup: link("lookup"),
      flows: link("flows"),
      model: modelFits ? model : null,
      shopName: read("shop-name")?.slice(0, 80) ?? "",
      helpLink: link("help-link", "a link that starts with http, https, tel or mailto", toHelpAddress),
      basketLink: link("basket-link"),
      linkHosts: hosts.filter(isHost),
      sessionName,
      relay: link("relay", "an address that starts with wss, without ? or #", toRelayAddress),
      helpHours,
      helpZone,
      insight: link("insight", onOwnSite, toCollectAddress),
      words: link("words"),
      picture:
        picture === null ? null : { src: picture, alt: plainText(read("picture-alt") ?? "").slice(0, 150) },
    },
  };
}

/** Whether this is the bare name of a host: no scheme, port, path or star, and not one word alone. */
function isHost(text: string): boolean {
  return /^[a-z0-9-]+(\.[a-z0-9-]+)+$/.test(text) && text.length <= 253;
}

/** A link to the shop's own people, who may also be reached by telephone or mail. */
function toHelpAddress(typed: string, base: string): string | null {
  const isCall = /^\s*(tel:\+?[\d().\s-]*\d|mailto:[^\s@]+@[^\s@]+)/i.test(typed);
  return isCall ? new URL(typed).href : toWebAddress(typed, base);
}
