export { After, createAfter } from "./after.tsx";
