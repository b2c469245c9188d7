export { IcePath } from "./ice-path.tsx";
export { default as icePathSheet } from "./ice-path.css?inline";
