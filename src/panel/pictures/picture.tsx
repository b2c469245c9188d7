/** What drawings.json holds: every picture by its id, and the pieces that several of them share. */
export type Drawings = { pieces: Shapes; pictures: Shapes };

type Shapes = Record<string, string[]>;

/**
 * Makes the component that draws. A picture is data, written as `draw` says: it is fetched as such, not run.
 * The component draws the picture with this id in a frame of 164 by 70, or nothing for an id that it does not know;
 * `title` says what the picture shows.
 */
export function createPicture({ pieces, pictures }: Drawings) {
  return function Picture({ id, title }: { id: string; title: string }) {
    if (!Object.hasOwn(pictures, id)) return null;
    return (
      <svg role="img" aria-label={title} class="fs-pic" viewBox="0 0 164 70">
        {draw(pictures[id], pieces)}
      </svg>
    );
  };
}

/**
 * A part starts with its style, one letter: `k` ink, `f` ink on a plain ground, `i` ice, `d` dim, `a` accent, `c` ice
 * in accent, `o` accent dot, `s` amber, `p` pipe. Then comes its shape: a path, or `R` and a box (left, top, width,
 * height), or `T` and a text (middle, foot, words). `@ name x y` sets a piece down at that place.
 */
function draw(parts: string[] = [], pieces: Shapes = {}) {
  return parts.map((part) => {
    const style = part[0];
    const [one = "", two, three, four] = part.slice(2).split(" ");
    if (style === "@") return <g transform={`translate(${two} ${three})`}>{draw(pieces[one])}</g>;
    if (part[1] === "R") return <rect class={style} x={one} y={two} width={three} height={four} rx="2" />;
    if (part[1] === "T") return <text x={one} y={two} children={three} />;
    const d = part.slice(1);
    return [<path class={style} d={d} />, style === "p" && <path class="q" d={d} />];
  });
}
