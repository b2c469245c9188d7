export { Sharing } from "./sharing.tsx";
