import { useEffect, useRef, useState } from "preact/hooks";
import type { PhotoGiven } from "../../../turn/index.ts";
import { showNumber } from "../reading/index.ts";
import type { PhotoProblem, PlateReader } from "./reader.ts";

type State = "none" | "reading" | "found" | "unread" | "broken" | PhotoProblem;

/**
 * Takes a photo of the plate and hands on which models it may show. The photo is drawn, read and, with this screen,
 * gone: nothing of it is kept or sent.
 */
export function PlatePhoto({ reader, texts, find, found }: PhotoGiven & { reader: PlateReader }) {
  const [state, setState] = useState<State>("none");
  const input = useRef<HTMLInputElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  // What is read of an earlier photo must not overwrite a later one's.
  const latest = useRef(0);

  const clear = (drawn = canvas.current) => {
    if (drawn) drawn.width = drawn.height = 0;
  };
  const stop = () => {
    latest.current += 1;
    clear();
    setState("none");
  };
  useEffect(() => {
    // When the screen goes, it is no longer there to be asked for.
    const drawn = canvas.current;
    return () => {
      latest.current += 1;
      clear(drawn);
      reader.end();
    };
  }, []);

  async function take(photo: File) {
    latest.current += 1;
    const own = latest.current;
    const isWanted = () => latest.current === own;
    found(null);
    setState("reading");
    const next = await readPhoto(photo, isWanted).catch((): State => "broken");
    if (!isWanted()) return;
    if (next !== "found" && next !== "unread") clear();
    setState(next);
  }

  async function readPhoto(photo: File, isWanted: () => boolean): Promise<State> {
    if (!canvas.current) return "none";
    const problem = await reader.draw(photo, canvas.current);
    if (problem) return problem;
    const models = await reader.read(canvas.current, find, isWanted);
    if (models && isWanted()) found(models);
    return models ? "found" : "unread";
  }

  const said = state === "none" || state === "found" ? "" : texts(`photo.${state}`);
  return (
    <div class="plate-photo">
      {state !== "broken" && (
        <>
          <button type="button" class="quiet" onClick={() => input.current?.click()}>
            {texts(state === "none" || state === "reading" ? "photo.take" : "photo.again")}
          </button>
          <p class="small">{texts("photo.about", { size: showNumber(texts, reader.megabytes, 0) })}</p>
          {/* On phones this opens the camera; elsewhere a file is chosen. */}
          <input
            ref={input}
            type="file"
            hidden
            accept="image/jpeg,image/png,image/webp"
            capture="environment"
            aria-label={texts("photo.take")}
            onChange={({ currentTarget: chosen }) => {
              const [photo] = chosen.files ?? [];
              // The same file may be chosen again.
              if (photo) void take(photo).then(() => (chosen.value = ""));
            }}
          />
        </>
      )}
      <canvas ref={canvas} width={0} height={0} role="img" aria-label={texts("photo.picture")} />
      <p role="status">{said}</p>
      {state === "reading" && (
        <button type="button" class="quiet" onClick={stop}>
          {texts("photo.stop")}
        </button>
      )}
    </div>
  );
}
