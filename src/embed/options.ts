import { chooseLanguage, chooseSessionName, matchLanguage, type ReadAttribute } from "./first-options.ts";
import { toWebAddress } from "./web-address.ts";

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
  model: string | null;
  shopName: string;
  helpLink: string | null;
  /** Hosts that links of parts may lead to, besides the shop's own. */
  linkHosts: string[];
  /** Keeps two panels on one site apart in storage. */
  sessionName: string;
};

/**
 * Reads and checks the tag's attributes. What cannot be used is left at its default and reported in `complaints`,
 * one sentence each, led by the name of the tag, for the developer's console.
 * @param languages the BCP 47 tags that have texts; the first is the fallback
 * @param base the address that relative links start from
 */
export function readOptions(
  read: ReadAttribute,
  inherited: string,
  languages: string[],
  base: string,
): { options: Options; complaints: string[] } {
  const complaints: string[] = [];
  const complain = (name: string, wants: string, got: string) =>
    complaints.push(
      `<fridgeside-panel>: attribute "${name}" must be ${wants}; got "${got.slice(0, 80)}". It is ignored.`,
    );
  const link = (name: string) => {
    const typed = read(name);
    if (!typed) return null;
    const safe = toWebAddress(typed, base);
    if (!safe) complain(name, "a link that starts with http or https", typed);
    return safe;
  };
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
  const modelFits = !model || model.length <= 40;
  if (!modelFits) complain("model", "a model code of at most 40 characters", model);
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
      helpLink: link("help-link"),
      linkHosts: (read("link-hosts") ?? "")
        .toLowerCase()
        .split(/[\s,]+/)
        .filter(Boolean),
      sessionName,
    },
  };
}
