import { type FileHandle, open, readFile, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { linesOf, readLines } from "./lines.ts";
import { lockFile } from "./lock-file.ts";
import { type Change, createShelf, storeOn } from "./shelf.ts";
import type { Store } from "./store.ts";

type Pending = { change: Change | undefined; done: () => void; failed: (problem: unknown) => void };

/** Changes of the file when it is made anew go out in groups of this many. */
const atOnce = 500;

/**
 * The store of one relay: a file that is only ever appended to. All that comes while the disk is busy is written
 * and synced together, once. When rooms were forgotten the file is made anew without them, at the next `tidy`.
 * @param onFault is told when the disk no longer takes anything; nothing is kept from then on
 * @throws Error where another relay has the file, or it is damaged
 */
export async function openFileStore(
  path: string,
  now: number,
  onFault: (problem: unknown) => void,
): Promise<Store> {
  const unlock = await lockFile(path);
  const shelf = createShelf();
  let file: FileHandle;
  let hasDead = false;
  try {
    const found = await readFile(path).catch(orNothing);
    for (const change of readLines(found).changes) shelf.make(change);
    // A torn end must not be written on from: what is there is made anew before anything comes.
    hasDead = found.length > 0;
    file = await open(path, "a", 0o600);
    await file.sync();
    await syncFolder(path);
  } catch (problem) {
    await unlock();
    throw problem;
  }
  let pending: Pending[] = [];
  let working: Promise<void> | null = null;
  let fault: unknown = null;

  const fail = (all: Pending[], problem: unknown) => {
    if (fault === null) onFault(problem);
    fault ??= problem ?? new Error("The disk takes nothing");
    for (const one of all) one.failed(fault);
  };
  const writeGroup = async (group: Pending[]) => {
    const changes = group.flatMap(({ change }) => change ?? []);
    if (changes.length) {
      await file.appendFile(linesOf(changes));
      await file.datasync();
    }
    for (const { done } of group) done();
  };
  const work = async () => {
    while (pending.length) {
      const all = pending;
      pending = [];
      try {
        if (fault !== null) throw fault;
        await writeGroup(all);
      } catch (problem) {
        fail(all, problem);
      }
    }
    working = null;
  };
  const keep = (change?: Change) =>
    new Promise<void>((done, failed) => {
      if (change?.op === "forget" || change?.op === "used") hasDead = true;
      pending.push({ change, done, failed });
      working ??= Promise.resolve().then(work);
    });
  /** Written beside the file, synced, and put in its place, while whoever comes waits. */
  const renew = async (changes: Change[]) => {
    const beside = `${path}.new`;
    await rm(beside, { force: true });
    const next = await open(beside, "ax", 0o600);
    for (let from = 0; from < changes.length; from += atOnce)
      await next.appendFile(linesOf(changes.slice(from, from + atOnce)));
    await next.sync();
    await rename(beside, path);
    await syncFolder(path);
    const old = file;
    file = next;
    await old.close();
  };
  const tidy = async (at: number) => {
    while (working) await working;
    if (!hasDead || fault !== null) return;
    hasDead = false;
    // The shelf has the changes of those who wait, so the new file has them.
    const waiting = pending.splice(0);
    working = renew([...shelf.changes(at)])
      .then(() => waiting.map(({ done }) => done()))
      .catch((problem) => fail(waiting, problem))
      .then(work);
    await working;
  };
  await tidy(now);
  return {
    ...storeOn(shelf, keep),
    tidy,
    isWell: () => fault === null,
    close: async () => {
      while (working) await working;
      await file.close();
      await unlock();
    },
  };
}

function orNothing(problem: NodeJS.ErrnoException): Buffer {
  if (problem.code !== "ENOENT") throw problem;
  return Buffer.alloc(0);
}

/** A name in a folder is kept once the folder is. */
async function syncFolder(path: string): Promise<void> {
  const folder = await open(dirname(path), "r");
  await folder.sync();
  await folder.close();
}
