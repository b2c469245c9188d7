import { chooseLanguage, type ReadAttribute, toRelayAddress, toWebAddress } from "../loading/index.ts";

/** The attributes of the tag. */
export const attributeNames = ["language", "theme", "relay", "catalogue", "token-from"] as const;

/** How a shop's page sets the desk up, after the check at the door. */
export type DeskOptions = {
  language: string;
  /** The web sockets of the relays that this shop lists; the first is dialled, others where it names them. */
  relays: string[];
  catalogue: string | null;
  /** Where whoever is signed in at the shop gets their token. */
  tokenFrom: string | null;
};

/**
 * Reads and checks the tag's attributes; what cannot be used counts as none.
 * @param languages the BCP 47 tags that have texts; the first is the fallback
 * @param base the address that relative ones start from
 */
export function readDeskOptions(
  read: ReadAttribute,
  inherited: string,
  languages: string[],
  base: string,
): DeskOptions {
  const address = (name: string) => {
    const typed = read(name);
    return typed ? toWebAddress(typed, base) : null;
  };
  const tokenFrom = address("token-from");
  return {
    language: chooseLanguage(read, inherited, languages),
    relays: (read("relay") ?? "").split(/\s+/).flatMap((one) => toRelayAddress(one) ?? []),
    catalogue: address("catalogue"),
    // It goes with the agent's own cookies, so it has to be the page's.
    tokenFrom: tokenFrom !== null && new URL(tokenFrom).origin === new URL(base).origin ? tokenFrom : null,
  };
}
