import { useEffect, useState } from "preact/hooks";
import type { BasketPart, BasketState, Services, Texts } from "../../../turn/index.ts";

type Props = { part: BasketPart; services: Services; texts: Texts };

/** 'Add to basket', and what became of it. Only the host page knows, and it may say so late or in another tab. */
export function BasketButton({ part, services: { basket, basketLink }, texts }: Props) {
  const [, look] = useState(0);
  useEffect(() => basket.watch(() => look((times) => times + 1)), [basket]);
  const state = basket.stateOf(part);
  const act = state === "silent" ? basket.askAgain : basket.ask;
  return (
    <>
      {/* There before it speaks, and above a second try, which it warns of. */}
      <Said state={state} texts={texts} />
      <button
        type="button"
        class={state === "silent" ? "wide" : "main wide"}
        aria-disabled={state === "adding" || state === "added"}
        onClick={() => {
          act(part);
          look((times) => times + 1);
        }}
      >
        {texts(labels[state])}
      </button>
      {basketLink && (state === "added" || state === "silent") && (
        <a class="shop" href={basketLink}>
          {texts("part.basket")}
        </a>
      )}
    </>
  );
}

const labels: Record<BasketState, string> = {
  new: "part.add",
  adding: "part.adding",
  silent: "part.add-anyway",
  added: "part.added",
  failed: "part.add-again",
};
const words: Partial<Record<BasketState, string>> = {
  silent: "part.silent",
  added: "part.added-said",
  failed: "part.failed",
};

function Said({ state, texts }: { state: BasketState; texts: Texts }) {
  const key = words[state];
  const isWrong = state === "failed" || state === "silent";
  return (
    <p role="status" class={isWrong ? "wrong" : "small"}>
      {key && texts(key)}
    </p>
  );
}
