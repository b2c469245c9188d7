import type { Guard, Note, Water } from "../../chart/index.ts";
import { keepersOf } from "../../compile/index.ts";
import type { Flow } from "../../guide/index.ts";
import type { Edge, Graph } from "./graph.ts";
import type { Problem } from "./problem.ts";
import { outcomesOf } from "./scope.ts";
import { emergency } from "./ways.ts";

/** A place of the chart with all that matters of the water there. `leaks`: causes found that keep it closed. */
type Stand = { leaf: string; water: Water; leaks: readonly string[] };

/**
 * Walks the product of the chart and the water over every scenario. A guard counts as passable unless what it says of
 * the water, or of leaks found, is false at this stand; every other word may hold or not, and no log is led.
 * @returns turns that need the water and can be met while it is closed by us; ways that end a search with it closed,
 * although nothing leaks and nobody was asked to open it; and endings that can be met so and do not speak of it
 */
export function findWaterForgotten(flow: Flow, graph: Graph): Problem[] {
  const keepers = keepersOf(flow);
  const from = new Map<string, Edge[]>();
  for (const edge of graph.edges) from.set(edge.from, [...(from.get(edge.from) ?? []), edge]);
  const endings = new Set(
    [...graph.leaves].flatMap(([leaf, { meta }]) => (meta?.outcome ? topOf(leaf) : [])),
  );
  const isEnding = (leaf: string) => endings.has(topOf(leaf));
  const problems = new Map<string, Problem>(unsettled(flow).map((one) => [`${one.code} ${one.state}`, one]));
  const say = (code: string, state: string, message: string) =>
    problems.set(`${code} ${state}`, { code, state, message });

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
      say(
        "water-left-closed",
        leaf,
        `"${leaf}" needs the water and can be met while the tap is closed by us.`,
      );
    if (closed && meta?.outcome && meta.tells !== "water")
      say(
        "water-untold",
        leaf,
        `"${leaf}" can be met while the tap is closed by us and does not speak of it.`,
      );
    for (const { to, event, way } of from.get(leaf) ?? []) {
      if (way?.guard && judge(way.guard, here, keepers) === false) continue;
      const note: Note = Object.assign({}, ...(way?.actions ?? []).map(({ params }) => params));
      const next = { leaf: to, water: note.water ?? water, leaks: leaksAfter(leaks, note, keepers) };
      const kept =
        flow.scenarios[topOf(leaf)]?.keeps || next.leaks.length || keepers.includes(note.cause ?? "");
      if (next.water === "closed-by-us" && isEnding(to) && !isEnding(leaf) && !emergency.test(event) && !kept)
        say("water-left-closed", leaf, `"${leaf}" leads to "${to}" while the tap is closed by us.`);
      open.push(next);
    }
  }
  return [...problems.values()];
}

const topOf = (leaf: string) => leaf.split("/")[0] ?? "";

/** Answers of a check that opens the tap and do not say how they leave it: it would be asked for ever. */
function unsettled(flow: Flow): Problem[] {
  return Object.values(flow.checks)
    .filter((check) => check.restores && outcomesOf(check).some(({ to, leaves }) => to === "done" && !leaves))
    .map(({ id }) => ({
      code: "water-unsettled",
      state: id,
      message: `An answer of check "${id}" does not say how it leaves the water, so it would be asked for ever.`,
    }));
}

function leaksAfter(leaks: readonly string[], note: Note, keepers: string[]): readonly string[] {
  const gone = [note.remedies, ...(note.again?.found ?? [])];
  const found = note.finds && keepers.includes(note.finds) ? [note.finds] : [];
  return [...new Set([...leaks.filter((one) => !gone.includes(one)), ...found])].sort();
}

/** Whether a guard holds at a stand; null where that hangs on what the walk does not know. */
function judge({ type, params }: Guard, stand: Stand, keepers: string[]): boolean | null {
  const { is, of, causes } = params as { is: string[]; of: Guard[]; causes: string[] };
  const each = () => of.map((one) => judge(one, stand, keepers));
  if (type === "water") return is.includes(stand.water);
  if (type === "led") return false;
  if (type === "found") {
    if (causes.some((cause) => stand.leaks.includes(cause))) return true;
    return causes.every((cause) => keepers.includes(cause)) ? false : null;
  }
  if (type === "not") return deny(judge(of as unknown as Guard, stand, keepers));
  if (type === "all") return every(each());
  if (type === "any") return deny(every(each().map(deny)));
  return null;
}

const deny = (value: boolean | null) => (value === null ? null : !value);
const every = (values: (boolean | null)[]) =>
  values.includes(false) ? false : values.includes(null) ? null : true;
