import type { FittedPart, Services, Texts } from "../../session/index.ts";
import { BasketButton } from "./basket.tsx";
import { showPrice } from "./format.ts";
import { ShopHelp } from "./shop-help.tsx";

type Part = Extract<FittedPart, { kind: "part" }>["part"];

/** One product of the shop: its name is text, its link was checked at the door. */
export function Offer({
  part,
  model,
  services,
  texts,
}: {
  part: Part;
  model: string;
  services: Services;
  texts: Texts;
}) {
  return (
    <div class="offer">
      <h4>{part.link ? <a href={part.link}>{part.name}</a> : part.name}</h4>
      <p class="small">
        <span class="model-code">{part.number}</span>
        {part.origin && ` · ${texts(`part.${part.origin}`)}`}
      </p>
      <p class="buy">
        <b>{showPrice(texts, part.price)}</b>
        <span class={`stock ${part.stock}`}>{texts(`part.${part.stock}`)}</span>
      </p>
      {part.stock === "out-of-stock" ? (
        <ShopHelp services={services} texts={texts} />
      ) : (
        <BasketButton
          part={{ number: part.number, name: part.name, model }}
          services={services}
          texts={texts}
        />
      )}
    </div>
  );
}
