import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "vitest";
import { commandsOf } from "../docs/documented-commands.ts";
import type { Installed } from "./installed.ts";

/** Does what the packed guide's page says, in its order: each command, and each file that it shows. */
export async function followTenMinutes(shop: Installed): Promise<void> {
  const page = readFileSync(join(shop.package, "demo/docs/ten-minutes.md"), "utf8");
  for (const [, path = "", content = ""] of page.matchAll(/<!-- file: (\S+) -->\n```\w+\n([\s\S]*?)```/g))
    shop.write(path, content);
  const commands = commandsOf("ten-minutes", page).map(({ command }) => command);
  expect(commands.length).toBeGreaterThanOrEqual(8);
  const install = commands.find((command) => command.startsWith("npm install")) ?? "";
  // It lies there as that command would have put it; no registry is asked here.
  expect(install).toBe(`npm install ./${shop.name}`);
  const serve = commands.find((command) => / serve /.test(command)) ?? "";
  for (const command of commands) {
    if (command === install || command === serve) continue;
    const { status, said } = shop.shell(command);
    expect(status, `${command}\n${said}`).toBe(0);
  }
  await lookAt(shop, serve);
}

/** The page as a browser gets it, and what its tag and its script name. */
async function lookAt(shop: Installed, command: string): Promise<void> {
  // Whoever has the usual port keeps it.
  const server = spawn("bash", ["-c", `exec ${command} --port 0`], {
    cwd: shop.folder,
    stdio: "pipe",
    // npx is the parent of what serves: both are ended.
    detached: true,
  });
  try {
    const [line] = await once(server.stdout, "data");
    const address = /http:\S+/.exec(String(line))?.[0] ?? "";
    const page = await (await fetch(address)).text();
    const named = [...page.matchAll(/ (?:src|catalogue|href)="(\/[^"]+)"/g)].map(([, path]) => path ?? "");
    expect(named).toEqual(["/page.css", "/fridgeside/fridgeside.en-GB.js", "/parts/catalogue.json"]);
    const hashes = JSON.parse(readFileSync(join(shop.folder, "public/fridgeside/integrity.json"), "utf8"));
    const parts = Object.keys(hashes).map((path) => `/fridgeside/${path}`);
    const asked = [...named, ...parts, "/flows/en-GB.json"].map(async (path) => {
      const response = await fetch(new URL(path, address));
      await response.arrayBuffer();
      return [path, response.status];
    });
    expect((await Promise.all(asked)).filter(([, status]) => status !== 200)).toEqual([]);
    const catalogue = await (await fetch(new URL("/parts/catalogue.json", address))).text();
    expect(JSON.parse(catalogue)).toHaveProperty("format");
    // Its links leave the page's own host, so the tag has to let them.
    expect(page).toContain('link-hosts="larder.example"');
  } finally {
    if (server.pid) process.kill(-server.pid);
  }
}
