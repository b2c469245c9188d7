export { After } from "./after.tsx";
