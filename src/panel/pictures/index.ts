export { IcePath } from "./ice-path.tsx";
export { createPicture, type Drawings } from "./picture.tsx";
