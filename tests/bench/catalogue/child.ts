import { spawn } from "node:child_process";
import { createWriteStream, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pipeline } from "node:stream/promises";
import { fileURLToPath } from "node:url";

const usage = new URL("usage.ts", import.meta.url).href;
export const commandLine = fileURLToPath(new URL("../../../src/cli/main.ts", import.meta.url));
export const demoGenerator = fileURLToPath(new URL("../../../demo/generate/main.ts", import.meta.url));

/**
 * What a process of its own took, from its start to its end: by the clock, and of a processor, which says more where
 * other work goes on; bytes of memory at its peak.
 */
export type Took = { seconds: number; cpu: number; peak: number; said: string };

/**
 * Runs a script in a process of its own, so that its peak memory is nobody else's.
 * @param into a file for what it prints; otherwise that is given back
 * @throws Error with what it printed where it fails
 */
export async function runScript(script: string, args: string[], into?: string): Promise<Took> {
  const folder = mkdtempSync(join(tmpdir(), "usage-"));
  const note = join(folder, "usage.json");
  const begun = performance.now();
  const child = spawn(
    process.execPath,
    ["--expose-gc", "--import", "tsx", "--import", usage, script, ...args],
    { env: { ...process.env, USAGE_FILE: note }, stdio: ["ignore", "pipe", "pipe"] },
  );
  const ended = new Promise<number | null>((resolve) => child.on("close", resolve));
  let said = "";
  let complained = "";
  child.stderr.on("data", (text) => {
    complained += text;
  });
  if (into) await pipeline(child.stdout, createWriteStream(into));
  else
    child.stdout.on("data", (text) => {
      said += text;
    });
  const code = await ended;
  const seconds = (performance.now() - begun) / 1000;
  try {
    if (code !== 0) throw new Error(`${script} ${args.join(" ")} ended with ${code}:\n${said}${complained}`);
    const { peak, cpu }: Pick<Took, "peak" | "cpu"> = JSON.parse(readFileSync(note, "utf8"));
    return { seconds, cpu, peak, said };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
