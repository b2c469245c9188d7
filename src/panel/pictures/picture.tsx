import { useEffect, useState } from "preact/hooks";

/** What a drawing's file holds, in one language. */
export type Drawing = {
  /** What it shows, in a sentence for who cannot see it. */
  title: string;
  /** The words for its parts; a line break is kept. */
  names: Record<string, string>;
  /**
   * In the order in which they are drawn: a tone or a line and its path (`b1 M0 0l5 5z`), or a part, its place and
   * where its name stands (`@tank 20 30 60 30`). A part that is a digit has no name: words elsewhere have the numbers.
   */
  shapes: string[];
};

/** Where drawings come from: those that have come, and the others. */
export type Drawings = {
  known: ReadonlyMap<string, Drawing>;
  /** Resolves once it has come, or cannot. */
  load(id: string): Promise<unknown>;
};

/** More names than these would cover the drawing: they are numbered, and stand below. */
const mostNames = 3;

/**
 * Makes the component that draws a picture by its id. Its frame is there before the drawing has come, and goes where
 * none comes: whatever a drawing shows is said in words as well.
 */
export function createPicture({ known, load }: Drawings) {
  return function Picture({ id }: { id: string }) {
    const [asked, setAsked] = useState<string | null>(null);
    const drawing = known.get(id);
    useEffect(() => {
      if (!drawing) load(id).then(() => setAsked(id));
    }, [id]);
    if (!drawing) return asked === id ? null : <svg aria-hidden="true" class="fs-pic" viewBox={viewBox} />;
    const { title, names, shapes } = drawing;
    const parts = Object.keys(names);
    const numbered = parts.length > mostNames ? parts : [];
    return (
      <figure class="fs-fig">
        <svg role="img" aria-label={title} class="fs-pic" viewBox={viewBox}>
          {shapes.map((shape) => draw(shape, names, numbered))}
        </svg>
        {numbered.length > 0 && (
          <ol>
            {numbered.map((part) => (
              <li key={part}>{names[part]}</li>
            ))}
          </ol>
        )}
      </figure>
    );
  };
}

const viewBox = "0 0 320 168";

function draw(part: string, names: Drawing["names"], numbered: string[]) {
  const at = part.indexOf(" ");
  const [kind, path] = [part.slice(0, at), part.slice(at + 1)];
  if (kind[0] === "@") return callout(kind.slice(1), path.split(" ").map(Number), names, numbered);
  // The line of water is its wall and, within it, what it holds.
  return [<path class={kind} d={path} />, /^p[fd]$/.test(kind) && <path class={`${kind}i`} d={path} />];
}

/** A dot on the part, a line to its name, and the name; or a number in a circle. A name starts where its line ends. */
function callout(part: string, places: number[], names: Drawing["names"], numbered: string[]) {
  const [x = 0, y = 0, toX = 0, toY = 0] = places;
  const side = toX < x ? -1 : 1;
  const number = /^\d$/.test(part) ? part : numbered.indexOf(part) + 1;
  const dot = <circle class="n" r="2.5" cx={x} cy={y} />;
  if (number)
    return [
      <path class="cl" d={`M${x} ${y}L${toX} ${toY}`} />,
      dot,
      <circle class="n" r="9" cx={toX} cy={toY} />,
      <text class="no" x={toX} y={toY + 5}>
        {number}
      </text>,
    ];
  const lines = (names[part] ?? "").split("\n");
  return [
    <path class="cl" d={`M${x} ${y}L${toX - 9 * side} ${toY}H${toX}`} />,
    dot,
    lines.map((line, i) => (
      <text class={side < 0 ? "n e" : "n"} x={toX + 4 * side} y={toY + 5 + (i - (lines.length - 1) / 2) * 15}>
        {line}
      </text>
    )),
  ];
}
