import { filter } from "./filter.ts";
import { iceMakerPictures } from "./ice-maker.ts";
import { tank } from "./tank.ts";
import { water } from "./water.ts";

/** Every drawing by its id: shapes and names of parts, in the order in which they are drawn. */
export const pictures: Record<string, string[]> = Object.fromEntries(
  Object.entries({ ...water, ...filter, ...tank, ...iceMakerPictures }).map(([id, draw]) => [id, draw()]),
);
