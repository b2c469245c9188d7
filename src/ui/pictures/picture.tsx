import { freezerDrawings } from "./freezer-drawings.ts";
import { machineDrawings } from "./machine-drawings.ts";
import { pieces } from "./pieces.ts";
import { waterDrawings } from "./water-drawings.ts";

const drawings: Record<string, string[]> = { ...machineDrawings, ...freezerDrawings, ...waterDrawings };

/** Every picture there is. */
export const pictureIds = Object.keys(drawings);

/** The picture with this id, in a frame of 164 by 70, or null where there is none; `title` says what it shows. */
export function Picture({ id, title }: { id: string; title: string }) {
  if (!pictureIds.includes(id)) return null;
  return (
    <svg role="img" aria-label={title} class="fs-pic" viewBox="0 0 164 70">
      {draw(drawings[id])}
    </svg>
  );
}

/**
 * A part starts with its style, one letter: `k` ink, `f` ink on a plain ground, `i` ice, `d` dim, `a` accent, `c` ice
 * in accent, `o` accent dot, `s` amber, `p` pipe. Then comes its shape: a path, or `R` and a box (left, top, width,
 * height), or `T` and a text (middle, foot, words). `@ name x y` sets a piece down at that place.
 */
function draw(parts: string[] = []) {
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
