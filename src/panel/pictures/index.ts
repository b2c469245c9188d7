export { IcePath } from "./ice-path.tsx";
export { createPicture, type Drawing, type Drawings } from "./picture.tsx";
