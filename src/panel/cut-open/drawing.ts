/** A place in the drawing, in its own pixels. */
type Flat = [x: number, y: number];

/**
 * A group of shapes, each a tone and a path. `at` is the station that they are: what is in copper there is so only where
 * the turn is about it, and of the material `plain` otherwise. `where` lists what has to hold: a station that the path
 * has, `tap-fed` or `tank-fed`, `-water` for what we had changed, `+water` for what we had not, `closed` for the machine
 * with its doors shut.
 */
export type Group = { at?: string; plain?: string; where: string[]; shapes: string[] };

/** Where a station's name points to, and the column that it is in. The last one that holds counts. */
export type Place = { station: string; side: "left" | "right"; at: Flat; where: string[] };

/** The machine cut open, with all that it may have and all states of it. */
export type CutOpenDrawing = { frame: { width: number; height: number }; groups: Group[]; places: Place[] };
