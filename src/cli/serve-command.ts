import { existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { parseArgs } from "node:util";
import sirv from "sirv";
import { reasonOf } from "../workbench/own-files/index.ts";
import { ownProcess, portIn, type Serving, serveUntilStopped } from "./serving.ts";

/**
 * `fridgeside serve [folder]`: a folder as a site, to try a page. Files are read when they are asked for, with the two
 * rules for caches that the guide gives for any server.
 * @returns exit code 0 once it was stopped, 1 where it cannot listen, 2 for unusable options
 */
export async function serveCommand(args: string[], serving: Serving = ownProcess): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      port: { type: "string", default: "4173" },
      host: { type: "string", default: "127.0.0.1" },
    },
  });
  const [folder = "."] = positionals;
  const port = portIn(values.port);
  if (port === null || !(existsSync(folder) && statSync(folder).isDirectory())) {
    console.error(port === null ? "A port is a number below 65536" : `There is no folder "${folder}"`);
    return 2;
  }
  const site = sirv(folder, {
    dev: true,
    etag: true,
    setHeaders: (response, path) => {
      response.setHeader("access-control-allow-origin", "*");
      if (isNamedByContent(path)) response.setHeader("cache-control", "public, max-age=31536000, immutable");
    },
  });
  const server = createServer((request, response) => {
    // sirv throws at a range that ends before it starts.
    delete request.headers.range;
    site(request, response, () => {
      response.writeHead(404, { "content-type": "text/plain" }).end("Not found");
    });
  });
  try {
    const says = (address: string) => `Serving ${folder} at ${address} (Ctrl+C stops it)`;
    await serveUntilStopped(server, port, values.host, says, serving);
    return 0;
  } catch (problem) {
    console.error(`It can't be served. ${reasonOf(problem)}`);
    return 1;
  }
}

/** Parts of a build, what reads plates and folders of a catalogue never change their content. */
function isNamedByContent(path: string): boolean {
  return /\/(parts|plate)\/|\/c-[0-9a-f]{12}\//.test(path);
}
