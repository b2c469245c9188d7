export { FoundInWords } from "./own-words.tsx";
