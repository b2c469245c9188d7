/** The bound `ownWords`, alone: the first file asks for it and must not bring the others along. */
export const longestWords = 1000;
