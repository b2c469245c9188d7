import type { PhotoModels, Services } from "../../../turn/index.ts";

/** Why a file is not read. */
export type PhotoProblem = "no-picture" | "too-large";

/** What reads a photo of a plate; a test hands over another than a browser has. */
export type PlateReader = {
  /** What has to come before the first photo is read, in megabytes. */
  megabytes: number;
  /** Draws the photo, scaled down. @returns what is wrong with its file, or null */
  draw(photo: Blob, canvas: HTMLCanvasElement): Promise<PhotoProblem | null>;
  /**
   * Reads what is drawn and holds it against the shop's models; nothing is taken.
   * @param isWanted where it says no, reading ends with what was found so far
   * @returns up to three models, as a near miss has them, or null where nothing read is like a code of the shop's
   * @throws Error where it cannot be read here: the files do not come, or may not run
   */
  read(
    canvas: HTMLCanvasElement,
    find: Services["findModel"],
    isWanted: () => boolean,
  ): Promise<PhotoModels | null>;
  /** Forgets all that it was given. */
  end(): void;
};
