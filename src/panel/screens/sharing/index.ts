export { Page } from "./page.tsx";
export { printPage } from "./print.ts";
export { Sharing } from "./sharing.tsx";
