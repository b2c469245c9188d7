/** Who somebody in a room is. The relay binds it to the connection; no message can claim it. */
export type Role = "householder" | "agent";

/**
 * What each may have carried. The relay never reads it. An `entry` is one of the householder's journal, which their
 * device alone writes; all that an agent sends is a suggestion that the device may show.
 */
export const carried: Record<Role, readonly string[]> = {
  householder: ["entry", "line"],
  agent: ["line", "point", "propose", "correct", "told"],
};

/** What each may say to the relay itself. Whom an `admit` or a `turn-away` means stands in its body. */
export const steering: Record<Role, readonly string[]> = {
  householder: ["admit", "turn-away", "pause", "resume", "code", "end"],
  agent: ["leave"],
};

/** Whether somebody in this role may send this kind. */
export function maySend(role: Role, kind: string): boolean {
  return carried[role].includes(kind) || steering[role].includes(kind);
}
