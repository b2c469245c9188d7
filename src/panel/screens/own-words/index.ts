export { OwnWords } from "./field.tsx";
export { FoundInWords } from "./found.tsx";
