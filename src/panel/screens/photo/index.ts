export { PlatePhoto } from "./plate-photo.tsx";
export type { PhotoProblem, PlateReader } from "./reader.ts";
