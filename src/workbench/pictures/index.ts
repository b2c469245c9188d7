import { cold } from "./cold.ts";
import { dispenser } from "./dispenser.ts";
import { doors } from "./doors.ts";
import { filter } from "./filter.ts";
import { floor } from "./floor.ts";
import { gates } from "./gates.ts";
import { ice } from "./ice.ts";
import { iceMakerPictures } from "./ice-maker.ts";
import { plates } from "./plates.ts";
import { tank } from "./tank.ts";
import { water } from "./water.ts";

export { frame } from "./paper.ts";

/** Every drawing by its id: shapes and names of parts, in the order in which they are drawn. */
export const pictures: Record<string, string[]> = Object.fromEntries(
  Object.entries({
    ...water,
    ...filter,
    ...tank,
    ...iceMakerPictures,
    ...ice,
    ...dispenser,
    ...doors,
    ...cold,
    ...floor,
    ...gates,
    ...plates,
  }).map(([id, draw]) => [id, draw()]),
);

/** The names of parts in a drawing; a number is none. */
export const namesIn = (shapes: string[]): string[] =>
  shapes.flatMap((shape) => shape.match(/^@(\D\S*)/)?.[1] ?? []);
