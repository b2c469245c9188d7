export { More } from "./more.tsx";
