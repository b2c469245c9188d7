export { AfterCare } from "./after-care.tsx";
export { MachinePage } from "./machine-page.tsx";
