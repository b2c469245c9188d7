export { createMore } from "./more.tsx";
