import { useEffect, useState } from "preact/hooks";

/** What a drawing's file holds, in one language. */
export type Drawing = {
  /** What it shows, in a sentence for who cannot see it. */
  title: string;
  /** In the order in which they are drawn: a class and a path (`b1 M0 0l5 5z`), or a text, its place and its words (`Te 20 30 Tank`). */
  shapes: string[];
  /** The names of numbered parts; empty where the names stand in the drawing, or in words elsewhere. */
  legend: string[];
};

/** Where drawings come from: those that have come, and the others. */
export type Drawings = {
  known: ReadonlyMap<string, Drawing>;
  /** Resolves once it has come, or cannot. */
  load(id: string): Promise<unknown>;
};

/**
 * Makes the component that draws a picture by its id. Its frame is there before the drawing has come, and goes where
 * none comes: whatever a drawing shows is said in words as well.
 */
export function createPicture({ known, load }: Drawings) {
  return function Picture({ id }: { id: string }) {
    const [asked, setAsked] = useState("");
    const drawing = known.get(id);
    useEffect(() => {
      if (!drawing) load(id).then(() => setAsked(id));
    }, [id]);
    if (!drawing && asked === id) return null;
    const { title, shapes = [], legend = [] } = drawing ?? {};
    return (
      <figure class="fs-fig" key={id}>
        <svg role="img" aria-hidden={!drawing} aria-label={title} class="fs-pic" viewBox="0 0 320 168">
          {shapes.map(draw)}
        </svg>
        {legend[0] && (
          <ol>
            {legend.map((name) => (
              <li>{name}</li>
            ))}
          </ol>
        )}
      </figure>
    );
  };
}

function draw(shape: string) {
  const [kind, x, y, ...words] = shape.split(" ");
  if (kind?.[0] === "T") return <text class={kind} x={x} y={y} children={words.join(" ")} />;
  return <path class={kind} d={shape.slice(shape.indexOf(" ") + 1)} />;
}
