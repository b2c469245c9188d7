// What a shop's own page does with a part: puts it into its basket, counts, and tells the panel that it did.
const basket = document.querySelector("#basket");
const kept = "larder-lane-basket";

/** @returns {{ number: string, name: string, model: string }[]} */
function readBasket() {
  try {
    return JSON.parse(sessionStorage.getItem(kept) ?? "[]");
  } catch {
    return [];
  }
}

basket.value = String(readBasket().length);

document.addEventListener("fridgeside-basket", ({ detail: { number, name, model, added, failed } }) => {
  try {
    const parts = [...readBasket(), { number, name, model }];
    sessionStorage.setItem(kept, JSON.stringify(parts));
    basket.value = String(parts.length);
    added();
  } catch {
    failed();
  }
});
