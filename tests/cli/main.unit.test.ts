import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { helpOf, oneLineOf } from "../../src/cli/help.ts";

const command = fileURLToPath(new URL("../../src/cli/fridgeside.mjs", import.meta.url));
const root = fileURLToPath(new URL("../../", import.meta.url));

type Section = { name: string; text: string };
const sections: Section[] = [
  ...readFileSync(`${root}demo/docs/commands.md`, "utf8").matchAll(/^## (.+)\n\n```text\n([^`]*)\n```$/gm),
].map(([, name = "", text = ""]) => ({ name, text }));

const run = (...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], { encoding: "utf8" });
  return { status, stdout, stderr };
};

describe("the command line", () => {
  test("names its commands to who asks, and to who names none that there is", () => {
    const asked = run("--help");
    expect([asked.status, asked.stderr]).toEqual([0, ""]);
    expect(asked.stdout).toMatch(/^Commands:\n {2}build .*\n {2}serve /);
    for (const line of asked.stdout.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    for (const name of ["", "constructor"]) {
      const wrong = run(...(name ? [name] : []));
      expect([wrong.status, wrong.stdout]).toEqual([2, ""]);
      expect(wrong.stderr).toBe(asked.stdout);
    }
  });

  test("says of a command what the guide says of it, word for word, and does nothing then", () => {
    for (const { name, text } of [sections[0], sections.at(-1)] as Section[])
      expect(run(name, "--help")).toEqual({ status: 0, stdout: `${text}\n`, stderr: "" });
    expect(run("catalogue", "inspect", "feed.csv", "--help").stdout).toContain(
      "fridgeside catalogue inspect",
    );
  });
});

describe("the guide's page of commands", () => {
  test("has a section for each command, in the order in which they are named, and for nothing else", () => {
    const named = [...run("--help").stdout.matchAll(/^ {2}(\S+)/gm)].map(([, name]) => name);
    expect(sections.map(({ name }) => name)).toEqual(named);
    for (const { name, text } of sections) expect(helpOf(name)).toBe(text);
  });

  test.each(sections)(
    "$name: fits a terminal, and says first how it is written and then what it does",
    ({ name, text }) => {
      for (const line of text.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
      expect(text).toMatch(new RegExp(`^(fridgeside ${name}\\b.*\n)+\n[A-Z].*\\.(\n|$)`));
      expect(oneLineOf(name)).toMatch(/^[A-Z].*\.$/);
    },
  );

  test.each(sections)("$name: has each option that it takes, and no other", ({ name, text }) => {
    const file = { play: "play", schemas: "schema-command", catalogue: "catalogue/command" }[name];
    const source = readFileSync(`${root}src/cli/${file ?? `${name}-command`}.ts`, "utf8");
    const taken = [
      ...source.matchAll(/(?:"([\w-]+)"|\b([\w-]+)): (?:\{ type: "(?:string|boolean)"|text\b|flag\b)/g),
    ].map(([, quoted, plain]) => `--${quoted ?? plain}`);
    const told = [...text.matchAll(/(?<![\w'])--[a-z][a-z-]*/g)].map(([option]) => option);
    // Options of another command stand in quotes with it.
    const own = told.filter(
      (option) => !new RegExp(`'[a-z ]+${option}`).test(text) || taken.includes(option),
    );
    expect([...new Set(own)].sort()).toEqual([...new Set(taken)].sort());
  });
});
