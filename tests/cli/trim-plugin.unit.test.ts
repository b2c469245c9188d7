import { build } from "vite";
import { describe, expect, test } from "vitest";
import { trimPlugin } from "../../src/cli/trim-plugin.ts";
import type { Unused } from "../../src/cli/unused-parts.ts";

const library = `
class Kettle {
  boil() { this.log("boiling"); return this.option ? "steam" : "hot"; }
  whistle() { return "loud"; }
  get lid() { return this.log("lid"); }
}
function log(text) { console.log(text); }
function weigh() { log("weighed"); return scales(); }
function scales() { return "heavy"; }
const size = { lid: 1 };
size.option = "wide";
export const kettle = new Kettle(), weight = weigh(), sizes = size;
`;

/** The library as a script takes it in, with what the list leaves out. */
async function trim(unused: Unused): Promise<string> {
  const address = "/shop/node_modules/kettle/index.js";
  const files: Record<string, string> = {
    "/shop/page.js": `export * from "${address}"; class Kettle { whistle() {} } export const own = new Kettle();`,
    [address]: library,
  };
  const built = await build({
    configFile: false,
    logLevel: "silent",
    plugins: [
      { name: "files", resolveId: (id) => (id in files ? id : null), load: (id) => files[id] ?? null },
      trimPlugin({ kettle: unused }),
    ],
    build: { write: false, minify: false, lib: { entry: "/shop/page.js", formats: ["es"] } },
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

  test("calls and assignments that nobody sees the effect of are left out, the rest of their line is not", async () => {
    const script = await trim({ silent: ["this.log", "size.option"] });
    expect(script).not.toContain("boiling");
    expect(script).not.toContain("wide");
    expect(script).toContain("weighed");
    expect(script).toContain("steam");
  });

  test("a question with one answer is answered", async () => {
    const script = await trim({ always: { "this.option": "false" } });
    expect(script).not.toContain("steam");
    expect(script).toContain("hot");
  });

  test("a function takes another body, and what only the old one needed goes with it", async () => {
    const script = await trim({ bodies: { weigh: "{ return 7 }" } });
    expect(script).not.toContain("heavy");
    expect(script).toContain("return 7");
  });

  test("what is assigned to is not taken for a question", async () => {
    expect(await trim({ always: { "size.option": "0" } }).catch(String)).toContain(
      "kettle has no size.option",
    );
  });

  test.each<[string, Unused]>([
    ["Kettle.pour", { members: ["Kettle.pour", "Kettle.boil"] }],
    ["this.pour", { silent: ["this.pour", "log"] }],
    ["this.full", { always: { "this.full": "true", "this.option": "true" } }],
    ["pour", { bodies: { pour: "{}", weigh: "{}" } }],
  ])("a build stops over %s, which the library does not have", async (name, unused) => {
    const problem = await trim(unused).catch(String);
    expect(problem).toContain(`kettle has no ${name}: look through src/cli/unused-parts.ts`);
  });
});
