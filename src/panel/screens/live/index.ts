export { AskPerson } from "./ask-person.tsx";
export { createLiveSlots, type LiveParts } from "./slot.tsx";
