import { chunkAddress } from "virtual:later";

/** A file that is asked for once, and after a failure again: at another address, for one that has failed is never tried again. */
export function createFile<Whole>(
  chunk: Parameters<typeof chunkAddress>[0],
  load: () => Promise<unknown>,
  isWhole: (file: Partial<Whole>) => boolean,
) {
  let asked: Promise<Whole> | null = null;
  let tries = 0;
  const get = async () => {
    const another = `${chunkAddress(chunk)}?${tries}`;
    const file = await (tries++ ? import(/* @vite-ignore */ another) : load());
    if (!isWhole(file)) throw new Error("Something else lies where a part was");
    return file as Whole;
  };
  return () => {
    asked ??= get().catch((problem) => {
      asked = null;
      throw problem;
    });
    return asked;
  };
}
