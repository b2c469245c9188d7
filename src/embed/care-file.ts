import type { GrowingTexts, Texts } from "../turn/index.ts";
import { createFile } from "./later-file.ts";

const getFile = createFile<typeof import("./care-screens.ts")>(
  "care-screens",
  () => import("./care-screens.ts"),
  (file) => Boolean(file.openCare),
);

/** What is said and kept after an ending, once its texts are there too. @throws Error where it does not come */
export async function bringCare(texts: Texts) {
  const file = await getFile();
  (texts as GrowingTexts).add(file.careTexts[texts("ui.locale")] ?? {});
  return file;
}
