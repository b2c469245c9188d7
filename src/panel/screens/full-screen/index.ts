export { FullScreen } from "./full-screen.tsx";
