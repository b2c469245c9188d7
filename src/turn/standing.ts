import type { TurnMeta } from "../chart/index.ts";
import { memoryOf, type Session } from "../session/index.ts";
import type { Texts } from "./actions.ts";
import { showList } from "./formats.ts";
import type { Turn } from "./turn.ts";

type Meaning = NonNullable<Session["adviser"]>["meaning"];
type Standing = Pick<Turn, "means" | "likely" | "left">;

/** What the last answer means, what it most likely is, and how many checks are left: all by the belief of the diagnosis. */
export function standingAt(session: Session, { outcome }: TurnMeta, texts: Texts): Standing {
  const { adviser, flow, log } = session;
  const memory = memoryOf(session);
  const now = outcome ? [] : (adviser?.chances(memory) ?? []);
  if (!adviser || !now[0]) return { means: "", likely: [], left: 0 };
  const bits = now.reduce((sum, { chance }) => sum - chance * Math.log2(chance), 0);
  const last = log.events.findLast((event) => "turn" in event);
  const check = last && "turn" in last ? last.turn.split(".")[0] : "";
  const findings = Object.entries(memory.findings).filter(([turn]) => turn.split(".")[0] !== check);
  const before = adviser.chances({ ...memory, findings: Object.fromEntries(findings) });
  const byStation = (chances: typeof now) => {
    const sums = new Map<string, number>();
    for (const { cause, chance } of chances) {
      const station = flow.causes[cause]?.station ?? "";
      sums.set(station, (sums.get(station) ?? 0) + chance);
    }
    return sums;
  };
  return {
    means: meansOf(byStation(before), byStation(now), adviser.meaning, texts),
    likely: adviser.call(memory).likely.map((cause) => texts(`causes.${cause}.is`)),
    left: Math.max(1, Math.round(bits ** 2 * adviser.meaning.checks)),
  };
}

/** One short sentence, or none where the answer has told too little. */
function meansOf(
  before: Map<string, number>,
  now: Map<string, number>,
  meaning: Meaning,
  texts: Texts,
): string {
  const say = (key: string, stations: string[]) => {
    const names = stations.map((station) => texts(`thread.at.${station}`));
    return texts(`thread.${key}`, { stations: showList(texts("ui.locale"), names, "disjunction") });
  };
  const { had, lost, most } = meaning;
  const likeliest = likeliestIn(now, meaning);
  if (likeliest[0] && `${[...likeliest].sort()}` !== `${likeliestIn(before, meaning).sort()}`)
    return say(likeliest[1] ? "leaves" : "points", likeliest);
  const gone = [...before].flatMap(([station, chance]) =>
    chance >= had && (now.get(station) ?? 0) <= chance * (1 - lost) ? [station] : [],
  );
  return gone[0] ? say("unlikely", gone.slice(0, most)) : "";
}

function likeliestIn(chances: Map<string, number>, { least, most, together }: Meaning): string[] {
  const first = [...chances]
    .sort(([, a], [, b]) => b - a)
    .filter(([, chance]) => chance >= least)
    .slice(0, most);
  // One that has it nearly all needs no other beside it.
  const [top] = first;
  if (top && top[1] >= together) return [top[0]];
  return first.reduce((sum, [, chance]) => sum + chance, 0) >= together
    ? first.map(([station]) => station)
    : [];
}
