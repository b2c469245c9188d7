export { Picture, pictureIds } from "./picture.tsx";
export { default as pictureSheet } from "./pictures.css?inline";
