import type { Texts } from "../../turn/index.ts";

/** Why the rest is not there yet, and whom to turn to meanwhile. An empty shop is one without a name. */
export type Trouble = { kind: "slow" | "lost"; shop: string; link: string | null };

/** That the rest is on its way; or that it is slow or does not come, and who can help meanwhile. */
export function Loading({ trouble, texts }: { trouble: Trouble | null | undefined; texts: Texts }) {
  if (!trouble) return <p class="loading">{texts("ui.loading")}</p>;
  const { kind, link, shop } = trouble;
  const help = texts("ui.shop-help", { shop: shop || texts("ui.shop") });
  return (
    <p class="loading" role="status">
      {texts(`ui.${kind}`)} {link ? <a href={link}>{help}</a> : help}
    </p>
  );
}
