// What a shop's own page does with a part: put it into its basket and say so.
const basket = document.querySelector("#basket");
let count = 0;

document.addEventListener("fridgeside-basket", (event) => {
  count += 1;
  basket.value = String(count);
  event.detail.added();
});
