import type { Drawings } from "../panel/pictures/index.ts";
import { platePictures } from "../panel/screens/model/index.ts";
import type { Session } from "../session/index.ts";
import type { WhenIdle } from "./ahead.ts";

/**
 * Fetches the drawings that a session may yet show, one after the other whenever nothing else is to be done, so that
 * those of later turns are there without a connection too. Each call has another session in the last one's place. What
 * did not come is asked for once more then, and after that only where it is shown: it may be gone.
 * @param mayFetch false without a connection, and where a person wants to save data
 */
export function createDrawingsAhead({ known, load }: Drawings, whenIdle: WhenIdle, mayFetch: () => boolean) {
  let wanted: string[] = [];
  const tries = new Map<string, number>();
  let coming: string | undefined;

  function next(): void {
    const id = mayFetch() ? wanted.shift() : undefined;
    coming = id;
    if (id === undefined) return;
    tries.set(id, triesOf(id) + 1);
    whenIdle(() => void load(id).then(next));
  }

  const triesOf = (id: string) => tries.get(id) ?? 0;

  return (session: Session): void => {
    wanted = drawingsOf(session).filter((id) => id !== coming && !known.has(id) && triesOf(id) < 2);
    if (coming === undefined) next();
  };
}

/** The drawings of all turns and parts of the scenario that a session is in, and of the plate; none in the opening. */
export function drawingsOf({ adviser, chart, flow }: Session): string[] {
  if (!adviser) return [];
  const parts = Object.values(flow.parts).flatMap(({ picture }) => picture ?? []);
  return [...new Set([...inStates(chart.states), ...parts, ...platePictures])];
}

type States = Session["chart"]["states"];

function* inStates(states: States): Generator<string> {
  for (const { meta, states: inner } of Object.values(states)) {
    const picture = (meta as { picture?: string } | undefined)?.picture;
    if (picture) yield picture;
    yield* inStates(inner as States);
  }
}
