// Digit confusions as published in php-iban's mistranscriptions.txt: a digit, and what it is misread as.
const table =
  "0~O,6,D,G; 1~I,L,7,2,Z; 2~Z,7,P,E,1; 3~8,B; 4~G,U; 5~S,7; 6~0,O,8,G,C,B,D; 7~J,I,1,L; 8~B,3,6; 9~G,Y,O,0,D";

export const plateCharacters = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"];

/** Every published pair, as two characters, in the direction of the table. */
export const published = new Set(
  table.split("; ").flatMap((row) => {
    const [digit = "", others = ""] = row.split("~");
    return others.split(",").map((other) => digit + other);
  }),
);

/** Every published pair in both directions. */
export const confusions = new Set([...published].flatMap((pair) => [pair, [...pair].reverse().join("")]));
