/** The cause that stands for all that no other cause of the list explains. */
export const anythingElse = "anything-else";
