/** The server that carries a householder's journal to an agent's desk; see ../PROTOCOL.md. */
export { openFileStore } from "./file-store.ts";
export { createLog } from "./log.ts";
export { createMemoryStore } from "./memory-store.ts";
export { openRedisStore } from "./redis-store.ts";
export { createRelay, type Relay, type RelayOptions } from "./relay.ts";
export { createSeals } from "./seals.ts";
export type { Store } from "./store.ts";
