export { default as icePathSheet } from "./ice-path.css?inline";
export { IcePath } from "./ice-path.tsx";
export { createPicture, type Drawings } from "./picture.tsx";
