import { useEffect, useState } from "preact/hooks";
import type { Texts } from "../../turn/index.ts";

/**
 * What a drawing's file holds, in the order in which it is drawn: a tone or a line and its path (`b1 M0 0l5 5z`), or
 * the name of a part, its place, and where the name stands (`@tank 20 30 60 30`).
 */
export type Drawing = string[];

/** Where drawings come from: those that have come, and the others. */
export type Drawings = {
  known: ReadonlyMap<string, Drawing>;
  /** @throws Error where it does not come */
  load(id: string): Promise<unknown>;
};

/** More names than these would cover the drawing: they are numbered, and stand below. */
const mostNames = 3;

/**
 * Makes the component that draws a picture by its id, with the words of a language. Nothing is drawn for an id that
 * has no words. The frame is there before the drawing has come; where it does not come, its words stand there instead.
 */
export function createPicture({ known, load }: Drawings, texts: Texts) {
  return function Picture({ id }: { id: string }) {
    const [lost, setLost] = useState<string | null>(null);
    const [, setCome] = useState<string | null>(null);
    const drawing = known.get(id);
    const title = texts(`pictures.${id}`);
    useEffect(() => {
      if (title && !drawing)
        load(id).then(
          () => setCome(id),
          () => setLost(id),
        );
    }, [id]);
    if (!title) return null;
    if (lost === id) return <p class="fs-lost">{title}</p>;
    const names = (drawing ?? []).flatMap((part) => part.match(/^@(\D\S*)/)?.[1] ?? []);
    const numbered = names.length > mostNames ? names : [];
    return (
      <figure class="fs-fig">
        <svg role="img" aria-label={title} class="fs-pic" viewBox="0 0 320 168">
          {drawing?.map((part) => draw(part, texts, numbered))}
        </svg>
        {numbered.length > 0 && (
          <ol>
            {numbered.map((word) => (
              <li key={word}>{texts(`labels.${word}`)}</li>
            ))}
          </ol>
        )}
      </figure>
    );
  };
}

function draw(part: string, texts: Texts, numbered: string[]) {
  const at = part.indexOf(" ");
  const [kind, path] = [part.slice(0, at), part.slice(at + 1)];
  if (kind[0] === "@") return callout(kind.slice(1), path.split(" ").map(Number), texts, numbered);
  // The line of water is its wall and, within it, what it holds.
  return [<path class={kind} d={path} />, /^p[fd]$/.test(kind) && <path class={`${kind}i`} d={path} />];
}

/** A dot on the part, a line to its name, and the name; or a number in a circle. A name starts where its line ends. */
function callout(word: string, places: number[], texts: Texts, numbered: string[]) {
  const [x = 0, y = 0, toX = 0, toY = 0] = places;
  const side = toX < x ? -1 : 1;
  const number = /^\d$/.test(word) ? word : numbered.indexOf(word) + 1;
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
  const lines = texts(`labels.${word}`).split("\n");
  return [
    <path class="cl" d={`M${x} ${y}L${toX - 9 * side} ${toY}H${toX}`} />,
    dot,
    lines.map((line, i) => (
      <text class={side < 0 ? "n e" : "n"} x={toX + 4 * side} y={toY + 5 + i * 15}>
        {line}
      </text>
    )),
  ];
}
