import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";

const root = fileURLToPath(new URL("../../", import.meta.url));
const page = readFileSync(`${root}demo/docs/safety.md`, "utf8");
const data = (path: string) => parse(readFileSync(root + path, "utf8"));

/** Rows of the table below a heading, cells without their marks. */
function rowsBelow(heading: string): string[][] {
  const [, after = ""] = page.split(`\n## ${heading}\n`);
  const [section = ""] = after.split("\n## ");
  return [...section.matchAll(/^\| `.*\|$/gm)].map(([row]) =>
    row
      .slice(1, -1)
      .split("|")
      .map((cell) => cell.replaceAll("`", "").trim()),
  );
}

describe("the page about safety", () => {
  test("has each danger, in the words that are on screen", () => {
    const dangers: Record<string, { heading: string }> = data("locales/en-GB/dangers.yaml");
    const told = Object.fromEntries(rowsBelow("What it stops for"));
    expect(told).toEqual(
      Object.fromEntries(Object.entries(dangers).map(([id, { heading }]) => [id, heading])),
    );
  });

  test("has each gate with its signal word and what it covers", () => {
    const { gates } = data("flows/gates.yaml") as {
      gates: Record<string, { signal: string; covers: string[] }>;
    };
    expect(rowsBelow("What stands before a hazardous step")).toEqual(
      Object.entries(gates).map(([id, { signal, covers }]) => [id, signal, covers.join(", ")]),
    );
  });

  test("names no statute but those that the regions have", () => {
    const statutes = ["GB", "US"].flatMap((region) =>
      Object.keys(data(`flows/regions/${region}.yaml`).statutes ?? {}),
    );
    expect(page).toContain("which are about water pressure");
    expect(statutes.every((id) => id.includes("pressure"))).toBe(true);
  });
});
