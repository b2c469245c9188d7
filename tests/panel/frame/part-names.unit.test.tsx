// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { fixtures } from "../gallery/fixtures.ts";
import { mount } from "../mount.tsx";

const guide = readFileSync(join(import.meta.dirname, "../../../demo/docs/colours-and-words.md"), "utf8");
const documented = [
  ...(guide
    .split("## Parts")[1]
    ?.split("\n## ")[0]
    ?.matchAll(/^\| `([\w-]+)`/gm) ?? []),
].map(([, name]) => name);

describe("the names of parts that a shop restyles", () => {
  test("are on some screen each, and no screen has another", async () => {
    const named = new Set<string | null>();
    for (const view of Object.values(fixtures)) {
      await mount(view);
      for (const part of document.querySelectorAll("[part]")) named.add(part.getAttribute("part"));
    }
    expect([...named].sort()).toEqual([...documented].sort());
    expect(documented).toEqual(["panel", "bar", "question", "answer", "field", "ending"]);
  });
});
