import { open, readFile, rm } from "node:fs/promises";

/**
 * Keeps a second relay from a file: a file beside it names the process that has it. One that a killed relay has left is
 * taken over.
 * @returns gives it back
 * @throws Error where another process has it
 */
export async function lockFile(path: string): Promise<() => Promise<void>> {
  const lock = `${path}.lock`;
  for (let tries = 0; ; tries++) {
    try {
      const file = await open(lock, "wx", 0o600);
      await file.writeFile(`${process.pid}`);
      await file.close();
      return () => rm(lock, { force: true });
    } catch (problem) {
      if ((problem as NodeJS.ErrnoException).code !== "EEXIST" || tries > 2) throw problem;
    }
    const owner = Number(await readFile(lock, "utf8").catch(() => ""));
    // In a container every relay has the same number: then it is the one before us.
    if (owner !== process.pid && isRunning(owner))
      throw new Error(`Another relay (process ${owner}) has ${path}. Two of them would mix up its entries.`);
    await rm(lock, { force: true });
  }
}

function isRunning(process_: number): boolean {
  if (!Number.isInteger(process_) || process_ <= 0) return false;
  try {
    process.kill(process_, 0);
    return true;
  } catch (problem) {
    return (problem as NodeJS.ErrnoException).code === "EPERM";
  }
}
