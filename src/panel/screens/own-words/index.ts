export { OwnWords } from "./own-words.tsx";
