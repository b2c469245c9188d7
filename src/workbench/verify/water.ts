import type { Note, Water } from "../../chart/index.ts";
import { keepersOf } from "../../compile/index.ts";
import { type Guard, type Truth, truthOf } from "../../condition/index.ts";
import type { Flow } from "../../guide/index.ts";
import { emergency } from "./exits.ts";
import type { Edge, Graph } from "./graph.ts";
import { outcomesOf } from "./scope.ts";
import type { ChartFault } from "./words-of-chart.ts";

/** A place of the chart with all that matters of the water there. `leaks`: causes found that keep it closed. */
type Stand = { leaf: string; water: Water; leaks: readonly string[] };

/**
 * Walks the product of the chart and the water over every scenario. A guard counts as passable unless what it says of
 * the water, or of leaks found, is false at this stand; every other word may hold or not, and no log is led.
 * @returns turns that need the water and can be met while it is closed by us; ways that end a search with it closed,
 * although nothing leaks and nobody was asked to open it; and endings that can be met so and do not speak of it
 */
export function findWaterForgotten(flow: Flow, graph: Graph): ChartFault[] {
  const keepers = keepersOf(flow);
  const from = new Map<string, Edge[]>();
  for (const edge of graph.edges) from.set(edge.from, [...(from.get(edge.from) ?? []), edge]);
  const endings = new Set(
    [...graph.leaves].flatMap(([leaf, { meta }]) => (meta?.outcome ? topOf(leaf) : [])),
  );
  const isEnding = (leaf: string) => endings.has(topOf(leaf));
  const faults = new Map(unsettled(flow).map((one) => [`${one.code} ${one.state}`, one]));
  const say = (fault: ChartFault) => faults.set(`${fault.code} ${fault.state}`, fault);

  const open: Stand[] = [{ leaf: graph.start, water: "as-found", leaks: [] }];
  const seen = new Set<string>();
  for (let here = open.pop(); here; here = open.pop()) {
    const key = `${here.leaf} ${here.water} ${here.leaks}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const { leaf, water, leaks } = here;
    const meta = graph.leaves.get(leaf)?.meta;
    const closed = water === "closed-by-us" || water === "left-closed";
    // What a check needs is asked of the flow too, so that a chart cannot lose it.
    const [check = "", turn = ""] = meta?.turn.split(".") ?? [];
    if (closed && (meta?.needs ?? flow.checks[check]?.turns[turn]?.needs))
      say({ code: "water-left-closed", state: leaf });
    if (closed && meta?.outcome && meta.tells !== "water") say({ code: "water-untold", state: leaf });
    for (const { to, event, way } of from.get(leaf) ?? []) {
      if (way?.guard && truthOf(way.guard, (word) => isSo(word, here, keepers)) === false) continue;
      const note: Note = Object.assign({}, ...(way?.actions ?? []).map(({ params }) => params));
      const next = { leaf: to, water: note.water ?? water, leaks: leaksAfter(leaks, note, keepers) };
      const kept =
        flow.scenarios[topOf(leaf)]?.keeps || next.leaks.length || keepers.includes(note.cause ?? "");
      if (next.water === "closed-by-us" && isEnding(to) && !isEnding(leaf) && !emergency.test(event) && !kept)
        say({ code: "water-left-closed", state: leaf, to });
      open.push(next);
    }
  }
  return [...faults.values()];
}

const topOf = (leaf: string) => leaf.split("/")[0] ?? "";

/** Answers of a check that opens the tap and do not say how they leave it: it would be asked for ever. */
function unsettled(flow: Flow): ChartFault[] {
  return Object.values(flow.checks)
    .filter((check) => check.restores && outcomesOf(check).some(({ to, leaves }) => to === "done" && !leaves))
    .map(({ id }) => ({ code: "water-unsettled", state: id }));
}

function leaksAfter(leaks: readonly string[], note: Note, keepers: string[]): readonly string[] {
  const gone = [note.remedies, ...(note.again?.found ?? [])];
  const found = note.finds && keepers.includes(note.finds) ? [note.finds] : [];
  return [...new Set([...leaks.filter((one) => !gone.includes(one)), ...found])].sort();
}

/** Whether a word of a guard is so at a stand; null where that hangs on what the walk does not know. */
function isSo({ type, params }: Guard, stand: Stand, keepers: string[]): Truth {
  const { is, causes } = params as { is: string[]; causes: string[] };
  if (type === "water") return is.includes(stand.water);
  if (type === "led") return false;
  if (type !== "found") return null;
  if (causes.some((cause) => stand.leaks.includes(cause))) return true;
  return causes.every((cause) => keepers.includes(cause)) ? false : null;
}
