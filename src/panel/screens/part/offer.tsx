import type { BasketPart, FoundPart, Services, Texts } from "../../../turn/index.ts";
import { showList, showPrice } from "../reading/index.ts";
import { BasketButton } from "./basket.tsx";
import { ShopHelp } from "./shop-help.tsx";

type Part = Extract<FoundPart, { kind: "part" }>["part"];
type Props = {
  part: Part;
  /** The model code, and what else of the plate the part was found by. */
  machine: Omit<BasketPart, "number" | "name">;
  services: Services;
  texts: Texts;
};

/** One product of the shop: its name is text, its link and its picture's address were checked at the door. */
export function Offer({ part, machine, services, texts }: Props) {
  const { number, name, link, picture, replaces = [] } = part;
  return (
    <div class="offer">
      <div class="product">
        {picture && (
          <img
            // Before `src`, which starts the loading.
            loading="lazy"
            referrerpolicy="no-referrer"
            width={80}
            height={80}
            alt=""
            src={picture}
            // It may be missing, or forbidden by the page's policy: then there is none.
            onError={(event) => {
              event.currentTarget.hidden = true;
            }}
          />
        )}
        <h4>{link ? <a href={link}>{name}</a> : name}</h4>
      </div>
      <p class="small">
        <span class="model-code">{number}</span>
        {part.origin && ` · ${texts(`part.${part.origin}`)}`}
      </p>
      {replaces.length > 0 && (
        <p class="small">{texts("part.replaces", { numbers: showList(texts, replaces) })}</p>
      )}
      <p class="buy">
        <b>{showPrice(texts, part.price)}</b>
        <span class={`stock ${part.stock}`}>{texts(`part.${part.stock}`)}</span>
      </p>
      {part.stock === "out-of-stock" ? (
        <>
          <p>{texts("part.out-of-stock-said")}</p>
          <ShopHelp services={services} texts={texts} />
        </>
      ) : (
        <BasketButton part={{ number, name, ...machine }} services={services} texts={texts} />
      )}
    </div>
  );
}
