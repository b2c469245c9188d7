/**
 * What the host page is told when a part is put into the basket; `variant` and `serial` only where the part was found
 * by what stands on the plate.
 */
export type BasketRequest = {
  number: string;
  name: string;
  model: string;
  variant?: string;
  serial?: string;
};

/** Seconds within which the host page must answer; a silent page must not leave a person waiting for ever. */
const ANSWER_SECONDS = 10;

/**
 * Asks the host page to put a part into its basket: a `fridgeside-basket` event that bubbles out of the shadow root.
 * Its `detail` holds the part and two functions, `added()` and `failed()`, one of which the page must call.
 * @returns resolves on `added`, rejects on `failed` or on no answer
 */
export function askBasket(host: EventTarget, part: BasketRequest): Promise<void> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error("no-answer")), ANSWER_SECONDS * 1000);
    const settle = (act: () => void) => () => {
      clearTimeout(timer);
      act();
    };
    const detail = { ...part, added: settle(resolve), failed: settle(() => reject(new Error("failed"))) };
    host.dispatchEvent(new CustomEvent("fridgeside-basket", { detail, bubbles: true, composed: true }));
  });
}
