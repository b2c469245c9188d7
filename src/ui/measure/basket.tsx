import { useRef, useState } from "preact/hooks";
import type { Services, Texts } from "../../session/index.ts";

/** What the host page is told of a part. */
export type BasketPart = Parameters<Services["addToBasket"]>[0];

type Props = { part: BasketPart; services: Services; texts: Texts };

/** 'Add to basket', and what became of it; the shop's page decides, so a failure can be tried again. */
export function BasketButton({ part, services, texts }: Props) {
  const [state, setState] = useState<"add" | "adding" | "added" | "failed">("add");
  // State comes too late for the second tap of a double tap, which would put two into the basket.
  const asked = useRef(false);
  async function add() {
    if (asked.current) return;
    asked.current = true;
    setState("adding");
    try {
      await services.addToBasket(part);
      setState("added");
    } catch {
      asked.current = false;
      setState("failed");
    }
  }
  return (
    <>
      <button
        type="button"
        class="main wide"
        aria-disabled={state === "adding" || state === "added"}
        onClick={add}
      >
        {texts(`part.${state === "failed" ? "add-again" : state}`)}
      </button>
      <p role="status" class={state === "failed" ? "wrong" : "small"}>
        {state === "failed" ? texts("part.failed") : state === "added" ? texts("part.added-said") : ""}
      </p>
    </>
  );
}
