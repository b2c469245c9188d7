export { PartCard } from "./part-card.tsx";
export { ShopHelp } from "./shop-help.tsx";
