import type { Services, Texts } from "../../../turn/index.ts";
import { AskPerson } from "../live/index.ts";

/**
 * The shop's own people: they can see the search where there is a relay, and it is opening hours. Besides a link if the shop
 * gave one, else its name. Both are shown as text, never as markup.
 */
export function ShopHelp({ services, texts }: { services: Services; texts: Texts }) {
  const { name, link } = services.shopHelp;
  const said = name ? texts("part.ask-shop", { shop: name }) : texts("part.ask-the-shop");
  // A call or a mail opens its own app; an empty tab would be left behind.
  const isPage = link?.startsWith("http");
  return (
    <>
      <AskPerson services={services} texts={texts} why="ending" />
      {link ? (
        <a class="shop" href={link} {...(isPage && { target: "_blank", rel: "noopener" })}>
          {said}
        </a>
      ) : (
        <p>{said}</p>
      )}
    </>
  );
}
