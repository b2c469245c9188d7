export { type AfterEnding, type CareParts, createCareSlots } from "./slots.tsx";
