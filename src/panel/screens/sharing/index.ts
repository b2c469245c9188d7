export { printPage } from "./print.ts";
export { Sharing } from "./sharing.tsx";
