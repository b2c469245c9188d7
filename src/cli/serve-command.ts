import { existsSync, statSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { parseArgs } from "node:util";
import sirv from "sirv";
import { reasonOf } from "../workbench/own-files/index.ts";

/** The process that serves, as far as it needs one. */
export type Serving = {
  print(line: string): void;
  /** Resolves when it is to stop. */
  untilStopped(): Promise<void>;
};

const ownProcess: Serving = {
  print: console.log,
  untilStopped: () =>
    new Promise((stop) => {
      for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => stop());
    }),
};

/**
 * `fridgeside serve [folder]`: a folder as a site, to try a page. Files are read when they are asked for, with the two
 * rules for caches that the guide gives for any server.
 * @returns exit code 0 once it was stopped, 1 where it cannot listen, 2 for unusable options
 */
export async function serveCommand(args: string[], { print, untilStopped }: Serving = ownProcess) {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      port: { type: "string", default: "4173" },
      host: { type: "string", default: "127.0.0.1" },
    },
  });
  const [folder = "."] = positionals;
  const port = /^\d{1,5}$/.test(values.port) ? Number(values.port) : Number.NaN;
  const fault =
    (!(port < 65_536) && "A port is a number below 65536") ||
    (!(existsSync(folder) && statSync(folder).isDirectory()) && `There is no folder "${folder}"`);
  if (fault) {
    console.error(fault);
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
    await new Promise<void>((listening, failed) => {
      server.once("error", failed);
      server.listen(port, values.host, listening);
    });
  } catch (problem) {
    console.error(`It can't be served. ${reasonOf(problem)}`);
    return 1;
  }
  const { port: own } = server.address() as AddressInfo;
  print(`Serving ${folder} at http://${values.host}:${own}/ (Ctrl+C stops it)`);
  await untilStopped();
  server.close();
  server.closeAllConnections();
  return 0;
}

/** Parts of a build, what reads plates and folders of a catalogue never change their content. */
function isNamedByContent(path: string): boolean {
  return /\/(parts|plate)\/|\/c-[0-9a-f]{12}\//.test(path);
}
