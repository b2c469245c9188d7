import { findModel, parseCatalogue } from "../../../src/catalogue/index.ts";
import { createPlateReader } from "../../../src/embed/plate-reader.ts";
import { chanceOf } from "../world/chance.ts";
import { type Distortion, takePhoto } from "./distort.ts";
import { printPlate } from "./print.ts";

/** What became of one photo; `found` are the codes that were offered, the first one first. */
export type PlateRead = {
  code: string;
  found: string[];
  /** Whether no character of the first one is marked as another than was read. */
  isAsRead: boolean;
  /** Milliseconds from the photo to what it shows. */
  took: number;
};

export type PlatesPage = {
  startReader(folder: string, feed: unknown): void;
  readPhoto(seed: string, spoilt: Distortion): Promise<PlateRead>;
};

let read: ((photo: Blob) => Promise<Omit<PlateRead, "code" | "took">>) | null = null;
let models: { code: string; brand: string }[] = [];

const page: PlatesPage = {
  startReader(folder, feed) {
    const { catalogue } = parseCatalogue(feed);
    if (!catalogue) throw new Error("The catalogue cannot be read");
    models = [...catalogue.models.values()];
    const reader = createPlateReader(folder, 0, (address) => address);
    read = async (photo) => {
      const canvas = document.createElement("canvas");
      const problem = await reader.draw(photo, canvas);
      if (problem) throw new Error(problem);
      const near = await reader.read(
        canvas,
        async (code) => findModel(catalogue, code),
        () => true,
      );
      const candidates = near?.candidates ?? [];
      return {
        found: candidates.map(({ model }) => model.code),
        isAsRead: candidates[0] !== undefined && !candidates[0].marks.some(Boolean),
      };
    };
  },
  async readPhoto(seed, spoilt) {
    const chance = chanceOf(seed);
    const model = models[Math.floor(chance() * models.length)];
    if (!model || !read) throw new Error("Nothing to read");
    const photo = await takePhoto(printPlate(chance, model), spoilt, chance);
    const began = performance.now();
    return { code: model.code, ...(await read(photo)), took: performance.now() - began };
  },
};
Object.assign(globalThis, page);
