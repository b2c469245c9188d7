/** Who somebody in a room is. The relay binds it to the connection; no message can claim it. */
export type Role = "householder" | "agent";

/**
 * The two ways on which a sender's messages go, each with numbers of its own: what is carried to the others, and what
 * steers the room. What has to wait on the one never holds up the other: a pause overtakes all that it stops.
 */
export type Lane = "carried" | "steering";

/**
 * What each may send. The relay never reads what it carries. An `entry` is one of the householder's journal, which
 * their device alone writes; all that an agent sends is a suggestion that the device may show, and `heard` what became
 * of one there. Whom an `admit` or a `turn-away` means stands in its body.
 */
export const kinds: Record<Lane, Record<Role, readonly string[]>> = {
  carried: {
    householder: ["entry", "line", "heard"],
    agent: ["line", "point", "propose", "correct", "told"],
  },
  steering: {
    householder: ["admit", "turn-away", "pause", "resume", "code", "end"],
    agent: ["leave"],
  },
};
