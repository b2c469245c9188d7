export { createBeside, saysSomething, stationsOf } from "./beside.tsx";
export { IcePath, signs } from "./ice-path.tsx";
export { createPicture, type Drawing, type Drawings } from "./picture.tsx";
