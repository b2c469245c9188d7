import { useState } from "preact/hooks";
import type { Services, Texts } from "../../session/index.ts";

type Props = { part: { number: string; name: string; model: string }; services: Services; texts: Texts };

/** 'Add to basket', and what became of it; the shop's page decides, so a failure can be tried again. */
export function BasketButton({ part, services, texts }: Props) {
  const [state, setState] = useState<"add" | "adding" | "added" | "failed">("add");
  async function add() {
    if (state === "adding" || state === "added") return;
    setState("adding");
    try {
      await services.addToBasket(part);
      setState("added");
    } catch {
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
