export { Changing } from "./changing.tsx";
