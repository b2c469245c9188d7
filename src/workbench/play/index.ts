/** A session without a screen, driven by lines of JSON. */
export { beginFields, type Conversations, createConversations, type Wishes } from "./conversations.ts";
export { createOpening, type PlayData } from "./opening.ts";
export { confirmedCode, createPlay, type Play, type PlayLine, type PlayOptions } from "./session.ts";
