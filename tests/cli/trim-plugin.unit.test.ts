import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { afterAll, describe, expect, test } from "vitest";
import { trimPlugin } from "../../src/cli/trim-plugin.ts";
import type { Unused } from "../../src/cli/unused/index.ts";

const library = `
class Kettle {
  boil() { this.log("boiling"); return this.option ? "steam" : "hot"; }
  whistle() { return "loud"; }
  get lid() { return this.log("lid"); }
}
function log(text) { console.log(text); }
function weigh() { log("weighed"); return scales(); }
const measure = (spoon) => { return "spoon of " + spoon; };
function scales() { return "heavy"; }
const size = { lid: 1, spout: "curved", pour() { return "slow"; } };
size.option = "wide";
const { spout } = size;
const cups = [];
function fill(list) { for (const cup of list.cups) cups.push({ cup, colour: "blue", saucer: { colour: "gold" } }); }
const lit = size.lid && size.option === "wide" && log("lit");
export const kettle = new Kettle(), weight = weigh(), all = [size, spout, measure, fill, cups, lit];
`;

const folder = mkdtempSync(join(tmpdir(), "fridgeside-"));
const inside = join(folder, "node_modules", "kettle");
mkdirSync(inside, { recursive: true });
writeFileSync(join(inside, "package.json"), `{ "name": "kettle", "version": "1.2.3" }`);
writeFileSync(join(inside, "index.js"), library);
writeFileSync(
  join(folder, "page.js"),
  `export * from "./node_modules/kettle/index.js"; class Kettle { whistle() {} } export const own = new Kettle();`,
);
afterAll(() => rmSync(folder, { recursive: true }));

/** The library as a script takes it in, with what the list leaves out. */
async function trim(unused: Partial<Unused>): Promise<string> {
  const built = await build({
    configFile: false,
    root: folder,
    logLevel: "silent",
    plugins: [trimPlugin({ kettle: { version: "1.2.3", ...unused } })],
    build: { write: false, minify: false, lib: { entry: join(folder, "page.js"), formats: ["es"] } },
  });
  return [built]
    .flat()
    .flatMap((one) => ("output" in one ? one.output.map((file) => ("code" in file ? file.code : "")) : []))
    .join("");
}

describe("of a library", () => {
  test("a member is left out by its class and name, a getter too, and only there", async () => {
    const script = await trim({ members: ["Kettle.whistle", "Kettle.lid"] });
    expect(script).not.toContain("loud");
    expect(script).not.toContain("get lid");
    expect(script).toContain("boil()");
    expect(script).toMatch(/whistle\(\) \{\s*\}/);
  });

  test("a member of an object is left out by what the object stands in, and not from where it is taken", async () => {
    const script = await trim({ members: ["size.spout", "size.pour"] });
    expect(script).not.toContain("curved");
    expect(script).not.toContain("slow");
    expect(script).toContain("lid: 1");
    expect(script).toMatch(/\{ spout \} = /);
  });

  test("calls and assignments that nobody sees the effect of are left out, the rest of their line is not", async () => {
    const script = await trim({ silent: ["this.log", "size.option"] });
    expect(script).not.toContain("boiling");
    expect(script).not.toMatch(/option = "wide"/);
    expect(script).toContain("weighed");
    expect(script).toContain("steam");
  });

  test("a question with one answer is answered", async () => {
    const script = await trim({ always: { "this.option": "false" } });
    expect(script).not.toContain("steam");
    expect(script).toContain("hot");
  });

  test("all that begins alike is answered at once, to its very end", async () => {
    const script = await trim({ always: { "size.lid && …": `"out"` } });
    expect(script).not.toContain('lit")');
    expect(script).not.toContain("&&");
    expect(script).toContain(`"out"`);
  });

  test("a loop over nothing is left out whole", async () => {
    const script = await trim({ always: { "list.cups": "[]" } });
    expect(script).not.toContain("for (");
    expect(script).not.toContain("blue");
  });

  test("what nobody reads of an object that is handed to a call is left out, and of no object within", async () => {
    const script = await trim({ unread: { "cups.push": ["colour", "cup"] } });
    expect(script).not.toContain("blue");
    expect(script).toContain("gold");
  });

  test.each<[Record<string, string>, string]>([
    [{ weigh: "{ return 7; }" }, "heavy"],
    [{ measure: "{ return 7; }" }, "spoon of"],
    [{ "Kettle.boil": "{ return 7; }" }, "boiling"],
  ])(
    "a function takes another body, %o, and what only the old one needed goes with it",
    async (bodies, gone) => {
      const script = await trim({ bodies });
      expect(script).not.toContain(gone);
      expect(script).toContain("return 7");
    },
  );

  test("what is assigned to is not taken for a question", async () => {
    const script = await trim({ always: { "size.option": "0" } });
    expect(script).toMatch(/size\.option = "wide"/);
    expect(script).not.toContain("=== ");
  });
});

describe("a build stops over", () => {
  test.each<[string, Partial<Unused>]>([
    ["Kettle.pour", { members: ["Kettle.pour", "Kettle.boil"] }],
    ["this.pour", { silent: ["this.pour", "log"] }],
    ["this.full", { always: { "this.full": "true", "this.option": "true" } }],
    ["size.lid || …", { always: { "size.lid || …": "true", "size.lid && …": "true" } }],
    ["pour", { bodies: { pour: "{}", weigh: "{}" } }],
    ["cups.push.handle", { unread: { "cups.push": ["handle", "cup"] } }],
    ["log.cup", { unread: { log: ["cup"] } }],
  ])("%s, which the library does not have", async (name, unused) => {
    const problem = await trim(unused).catch(String);
    expect(problem).toContain(`kettle has no ${name}: look through src/cli/unused/kettle.ts`);
  });

  test("a version that the list was not made by", async () => {
    const problem = await trim({ version: "1.2.2" }).catch(String);
    expect(problem).toContain(
      "kettle is 1.2.3 and its list is for 1.2.2: look through src/cli/unused/kettle.ts",
    );
  });
});
