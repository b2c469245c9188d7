import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";

const root = fileURLToPath(new URL("../../", import.meta.url));
const page = readFileSync(`${root}demo/docs/privacy.md`, "utf8");
const [, kept = ""] = page.split("\n## What is kept on the device\n");
/** Each key of the page's table, with where it lies. */
const rows = [...kept.matchAll(/^\| `([^`]+)` +\| ([^|]+?) +\|/gm)].map(([, key = "", where = ""]) => ({
  key,
  where,
}));

const sources = readdirSync(`${root}src`, { recursive: true, encoding: "utf8" })
  .filter((name) => /\.tsx?$/.test(name) && !/\.unit\.test\./.test(name))
  .map((name) => ({
    name,
    // What is said about storage stores nothing.
    code: readFileSync(`${root}src/${name}`, "utf8").replace(/\/\*[\s\S]*?\*\/|(?<!:)\/\/.*/g, ""),
  }));

/** Every file that touches a place where a browser keeps things, and that place. Whoever adds one adds the page's line. */
const places: Record<string, string> = {
  "embed/basket.ts": "localStorage",
  "embed/care-screens.ts": "localStorage",
  "embed/caring.ts": "localStorage sessionStorage",
  // Takes the answers of a link out of the address; keeps nothing.
  "embed/carrying.ts": "history",
  "embed/engine.ts": "sessionStorage",
  "embed/exclusive.ts": "BroadcastChannel locks",
  "embed/first-options.ts": "localStorage",
  "embed/live-place.ts": "localStorage",
  "embed/log-store.ts": "localStorage",
  "embed/stop-mark.ts": "localStorage sessionStorage",
  "desk/element.ts": "sessionStorage",
  "panel/screens/full-screen/back-entries.ts": "history",
};

describe("the page about privacy", () => {
  test("was written with every place in view where the source keeps anything", () => {
    const touching = sources.flatMap(({ name, code }) => {
      const found = [
        ...code.matchAll(
          /\b(localStorage|sessionStorage|indexedDB|BroadcastChannel|cookieStore|serviceWorker)\b|navigator\.(locks)|document\.(cookie)|\b(caches)\.open|(history)\.(?:push|replace)State/g,
        ),
      ].map((match) => match.slice(1).find(Boolean) ?? "");
      return found.length ? [[name, [...new Set(found)].sort().join(" ")]] : [];
    });
    expect(Object.fromEntries(touching)).toEqual(places);
  });

  test("has a line for each key of a search that the source names, and no other", () => {
    const named = sources
      .filter(({ name }) => name.startsWith("embed/"))
      .flatMap(({ code }) => [...code.matchAll(/[`"}]:([a-z][a-z-]*)[`"]/g)].map(([, key]) => key));
    expect(named.length).toBeGreaterThan(5);
    const told = rows.map(({ key }) => /^fridgeside:<name>(?::(.+))?$/.exec(key)?.[1]).filter(Boolean);
    expect([...new Set(told)].sort()).toEqual([...new Set(named)].sort());
  });

  test("names the keys that have no session's name as the source does", () => {
    const constantIn = (file: string) =>
      /^const (?:key|name) = "([\w-]+)";/m.exec(sources.find(({ name }) => name === file)?.code ?? "")?.[1];
    const bare = rows.map(({ key }) => key).filter((key) => !key.includes(":"));
    expect(bare).toEqual([
      constantIn("panel/screens/full-screen/back-entries.ts"),
      constantIn("desk/kept-rooms.ts"),
    ]);
  });

  test("says how long as the data do", () => {
    const { "session-days": days } = parse(readFileSync(`${root}flows/choosing.yaml`, "utf8"));
    expect(page.match(/\b\d+ days\b/g)).toEqual(Array(2).fill(`${days.value} days`));
  });
});
