import { codeText, markDifferences } from "../catalogue/index.ts";
import type { PhotoProblem, PlateReader } from "../panel/screens/photo/index.ts";
import {
  bounds,
  type PlateMatch,
  pictureSizeOf,
  portableGreymap,
  readPlate,
  readSide,
  toGrey,
} from "../plate/index.ts";
import type { PhotoModels } from "../turn/index.ts";
import { type PrintReader, startPrintReader } from "./plate-worker.ts";

/**
 * Reads plates in this browser with the files of a folder. Nothing is fetched before the first photo is read.
 * @param folder where the files of this very build lie, with a slash at its end
 * @param bytes that they have together
 * @param trusted makes an address one that the page's policy lets a worker be started from
 */
export function createPlateReader(
  folder: string,
  bytes: number,
  trusted: (address: string) => string,
): PlateReader {
  let started: Promise<PrintReader> | null = null;
  const start = () => {
    started ??= startPrintReader(trusted(`${folder}worker.js`), folder);
    // What did not come now may come for the next photo.
    started.catch(() => {
      started = null;
    });
    return started;
  };
  return {
    megabytes: Math.round(bytes / 1_000_000),
    draw,
    async read(canvas, find, isWanted) {
      const pixels = brushOf(canvas).getImageData(0, 0, canvas.width, canvas.height);
      const print = await start();
      const matches = await readPlate(
        toGrey(pixels),
        { find, read: (picture) => print.read(portableGreymap(picture)) },
        isWanted,
      );
      return asNearMiss(matches);
    },
    end() {
      started?.then((print) => print.end()).catch(() => {});
      started = null;
    },
  };
}

async function draw(photo: Blob, canvas: HTMLCanvasElement): Promise<PhotoProblem | null> {
  if (photo.size > bounds.file) return "too-large";
  const size = pictureSizeOf(new Uint8Array(await photo.slice(0, bounds.head).arrayBuffer()));
  if (!size) return "no-picture";
  const [long, short] = [Math.max(size.width, size.height), Math.min(size.width, size.height)];
  if (long * short > bounds.pixels || long > bounds.slimness * short) return "too-large";
  const bitmap = await createImageBitmap(photo).catch(() => null);
  if (!bitmap) return "no-picture";
  const factor = Math.min(1, readSide / Math.max(bitmap.width, bitmap.height));
  canvas.width = Math.round(bitmap.width * factor);
  canvas.height = Math.round(bitmap.height * factor);
  const brush = brushOf(canvas);
  brush.imageSmoothingQuality = "high";
  brush.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return null;
}

function brushOf(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  const brush = canvas.getContext("2d", { willReadFrequently: true });
  if (!brush) throw new Error("Nothing can be drawn here");
  return brush;
}

function asNearMiss(matches: PlateMatch[]): PhotoModels | null {
  const [best] = matches;
  if (!best) return null;
  const candidates = matches.map(({ model, read, distance }) => ({
    model,
    marks: distance === 0 ? [] : markDifferences(codeText(read), model.code),
    asTyped: false,
  }));
  return { kind: "near", isPhoto: true, candidates, differing: [], more: 0, typed: best.read };
}
