export { ModelScreen } from "./model-code.tsx";
export { platePictures } from "./plate-finder.tsx";
