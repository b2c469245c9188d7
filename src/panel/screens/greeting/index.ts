/** The picture of a shop at the turn that greets; only shops that have one fetch it. */
export { createGreeting } from "./greeting.tsx";
