import type { PrintedLine } from "../plate/index.ts";

/** A reader of print in a worker of its own; it is gone with `end`, and all that it was given with it. */
export type PrintReader = { read(picture: Uint8Array<ArrayBuffer>): Promise<PrintedLine[]>; end(): void };

type Answer = { jobId: string; status: "resolve" | "reject" | "progress"; data: unknown };
type Page = { blocks: { paragraphs: { lines: { text: string; confidence: number }[] }[] }[] | null };

/**
 * Starts tesseract.js from the files beside ours. We speak its worker's messages ourselves: its own front part falls back
 * to another host's files wherever an address is not given, and starts workers from texts, which no policy should allow.
 * @param address of the worker's script, by itself or as a policy of the page wants it
 * @param folder where the English data lies
 * @throws Error where it does not come, or may not run
 */
export async function startPrintReader(address: string, folder: string): Promise<PrintReader> {
  const worker = new Worker(address);
  const waiting = new Map<string, { done(data: unknown): void; fail(problem: Error): void }>();
  let jobs = 0;
  const failAll = (problem: Error) => {
    for (const { fail } of waiting.values()) fail(problem);
    waiting.clear();
  };
  worker.onmessage = ({ data: { jobId, status, data } }: MessageEvent<Answer>) => {
    if (status === "progress") return;
    const job = waiting.get(jobId);
    waiting.delete(jobId);
    if (status === "resolve") job?.done(data);
    else job?.fail(new Error(String(data)));
  };
  worker.onerror = (event) => failAll(new Error(event.message || "The reader did not start"));
  const ask = (action: string, payload: object) =>
    new Promise<unknown>((done, fail) => {
      const jobId = `${++jobs}`;
      waiting.set(jobId, { done, fail });
      worker.postMessage({ workerId: "plate", jobId, action, payload });
    });
  const end = () => {
    failAll(new Error("Ended"));
    worker.terminate();
  };
  try {
    await ask("load", { options: { lstmOnly: true, corePath: `${folder}none.js`, logging: false } });
    // Nothing is kept in the browser's storage but what its own cache holds of any file.
    const options = { langPath: folder, cacheMethod: "none", gzip: true, lstmOnly: true };
    await ask("loadLanguage", { langs: "eng", options });
    await ask("initialize", { langs: "eng", oem: 1, config: { load_system_dawg: "0", load_freq_dawg: "0" } });
    await ask("setParameters", { params: settings });
  } catch (problem) {
    end();
    throw problem;
  }
  return {
    end,
    async read(picture) {
      const page = (await ask("recognize", {
        image: picture,
        options: {},
        output: { text: false, blocks: true },
      })) as Page;
      return (page.blocks ?? []).flatMap(({ paragraphs }) =>
        paragraphs.flatMap(({ lines }) =>
          lines.map(({ text, confidence }) => ({ text: text.trim(), sure: confidence })),
        ),
      );
    },
  };
}

/** Print wherever it stands (11), no words of a dictionary: a code is none. */
const settings = { tessedit_pageseg_mode: "11", user_defined_dpi: "150" };
