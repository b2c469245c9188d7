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

export { label, namesIn } from "./callouts.ts";
export { createCutOpen } from "./cut-open.ts";
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
