import { spawnSync } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";

/** How long a command took, in seconds. `processor` is user and system time of all its processes; null: not known. */
export type Took = { wall: number; processor: number | null };

/**
 * Runs a command of the shell and measures it. The processor time is what the shell's own `times` (POSIX) says of the
 * processes that it has waited for; where there is no such shell only the wall time is known.
 * @param note a file to write the shell's answer into; it is removed again
 */
export function runTimed(command: string, cwd: string, note: string): { status: number | null; took: Took } {
  const start = performance.now();
  const timed = `(${command}); status=$?; times > "$NOTE"; exit $status`;
  const hasTimes = process.platform !== "win32";
  const { status } = spawnSync(hasTimes ? timed : command, {
    cwd,
    stdio: "inherit",
    shell: true,
    env: { ...process.env, NOTE: note },
  });
  const wall = (performance.now() - start) / 1000;
  return { status, took: { wall, processor: hasTimes ? processorIn(note) : null } };
}

function processorIn(note: string): number | null {
  try {
    const text = readFileSync(note, "utf8");
    rmSync(note);
    return secondsOf(text);
  } catch {
    return null;
  }
}

/** The seconds that the output of `times` adds up to, such as `0m1.50s 0m0.25s`, a line for the shell and its children. */
export function secondsOf(times: string): number | null {
  const each = [...times.matchAll(/(\d+)m([\d.,]+)s/g)];
  if (each.length === 0) return null;
  return each.reduce((sum, [, m, s]) => sum + Number(m) * 60 + Number(s?.replace(",", ".")), 0);
}

/** Several commands after one another. */
export function sumOf(all: Took[]): Took {
  const processor = all.reduce<number | null>(
    (sum, each) => (sum === null || each.processor === null ? null : sum + each.processor),
    0,
  );
  return { wall: all.reduce((sum, { wall }) => sum + wall, 0), processor };
}

export function inMinutes({ wall, processor }: Took): string {
  const minutes = (seconds: number) => (seconds / 60).toFixed(1);
  return `${minutes(wall)} min${processor === null ? "" : `, ${minutes(processor)} min of processor time`}`;
}
