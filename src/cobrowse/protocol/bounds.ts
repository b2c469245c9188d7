/** Those of the bounds below that a phone minds itself, apart: the others would come along. */
export const messageBounds = {
  /** Bytes of one message to the relay, as UTF-8. */
  message: 4096,
  /** Characters of what one message carries; with its envelope it has to stay below the bytes above. */
  body: 4000,
  /** The highest number of a message or an entry. */
  number: 1_000_000,
} as const;

/** What the relay takes, at most. What is beyond closes the line, waits or is refused; PROTOCOL.md says which. */
export const relayBounds = {
  ...messageBounds,
  /** Entries and suggestions of one room. */
  entries: 500,
  /** Admissions, pauses, new codes and the like of one room; ending it is always possible. */
  steering: 100,
  /** People in one room at a time, the householder and whoever waits to be let in among them. */
  peers: 5,
  /** Rooms of one relay at a time. */
  rooms: 1000,
  /** Connections of one relay at a time. */
  connections: 6000,
  /** Connections from one address at a time: a call centre has one. */
  connectionsFromOne: 200,
  /** Milliseconds that a room lasts: two hours. */
  roomLasts: 7_200_000,
  /** Milliseconds after its end in which slow readers of a room still get what was said; then it is forgotten. */
  endLasts: 60_000,
  /** Milliseconds that a code lasts, which are NIST SP 800-63B's ten minutes for a secret passed on by another channel. */
  codeLasts: 600_000,
  /** Messages a second from one connection, over time. */
  perSecond: 5,
  /** Messages at once from one connection. */
  burst: 20,
  /** Messages above that before the line is cut; until then they are dropped, and their sender repeats them. */
  dropped: 40,
  /** Bytes on their way to one reader before the rest waits for it. */
  unread: 65_536,
  /** Milliseconds that a reader may leave as much unread before the line is cut. */
  slowFor: 15_000,
  /** Milliseconds between two repetitions of what one connection asks for. */
  askAgain: 1500,
  /** Milliseconds within which everybody comes back after a relay has said that it stops, so that not all do at once. */
  comeBack: 5000,
  /** Milliseconds until the first message, which says who is there. */
  firstMessage: 10_000,
  /** Tries of codes a minute from one address. */
  tries: 5,
  /** Failed tries in a row from one address, or by one agent, that lock it. */
  failures: 10,
  /** Milliseconds of that lock. */
  lockLasts: 900_000,
  /** Failed tries a minute from everywhere; beyond them nobody joins until the minute is over. */
  failuresOfAll: 50,
  /** Addresses and agents that are remembered for the brakes. */
  remembered: 10_000,
  /** Characters of an agent's token. */
  token: 2000,
  /** Characters of a typed code, with whatever stands between them. */
  code: 20,
  /** Characters of an agent's name. */
  name: 60,
  /** Characters of the name of a room, a person in it, or of a secret. */
  id: 40,
} as const;
