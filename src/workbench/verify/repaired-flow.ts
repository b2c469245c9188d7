import type { Flow, Scenario } from "../../guide/index.ts";
import { assembleFlow } from "../../guide/index.ts";
import { type Folder, nameOf, neededFiles } from "./folder.ts";
import type { Repair } from "./name-check.ts";
import { valueAt } from "./shape.ts";

/**
 * The flow of a folder, its lost names repaired and its unreadable checks left out, so that the rest can be judged
 * without an echo of what was reported already. Null where one of the files that everything rests on cannot be read.
 */
export function assembleRepaired(folder: Folder, repairs: Repair[]): Flow | null {
  const files: Record<string, unknown> = {};
  for (const [file, kind] of folder.sound) {
    const data = copyBare(folder.sources.get(file)?.data) as { id?: string };
    if (kind === "check" || kind === "scenario") data.id = nameOf(file);
    files[file] = data;
  }
  if (neededFiles.some((file) => !folder.sound.has(file))) return null;
  for (const repair of inOrder(repairs)) apply(files[repair.file], repair);
  const whole = assembleFlow(files, "");
  const flow = { ...whole, checks: bare(whole.checks), scenarios: bare(whole.scenarios) };
  for (const scenario of Object.values(flow.scenarios)) leaveOutUnread(flow, scenario);
  return flow;
}

function leaveOutUnread(flow: Flow, scenario: Scenario): void {
  scenario.checks = scenario.checks.filter(({ check }) => flow.checks[check]);
}

/** A copy in which a name like "constructor" finds nothing that was not written down. */
function copyBare(data: unknown): unknown {
  return JSON.parse(JSON.stringify(data), (_, value) =>
    typeof value === "object" && value !== null && !Array.isArray(value) ? bare(value) : value,
  );
}

const bare = <T extends object>(record: T): T => Object.assign(Object.create(null), record);

/** Values are put in first; then the last of a list goes first, so that the places of the others stay. */
function inOrder(repairs: Repair[]): Repair[] {
  const lastStep = ({ path }: Repair) => Number(path.at(-1)) || 0;
  const puts = repairs.filter((repair) => "value" in repair);
  const drops = repairs.filter((repair) => !("value" in repair)).sort((a, b) => lastStep(b) - lastStep(a));
  return [...puts, ...drops];
}

function apply(data: unknown, repair: Repair): void {
  const holder = valueAt(data, repair.path.slice(0, -1));
  const step = repair.path.at(-1);
  if (typeof holder !== "object" || holder === null || step === undefined) return;
  if ("value" in repair) (holder as Record<string | number, unknown>)[step] = repair.value;
  else if (Array.isArray(holder)) holder.splice(Number(step), 1);
  else delete (holder as Record<string | number, unknown>)[step];
}
