import { parseArgs } from "node:util";
import { ownFlows, readFlow } from "../workbench/build/index.ts";
import { drawScxml, drawSvg } from "../workbench/draw/index.ts";
import { Refusal, realFiles, reasonOf, removeQuietly } from "../workbench/own-files/index.ts";

/**
 * `fridgeside draw <scenario> [--svg | --scxml] [--out file]`: one scenario's chart, to the file or to the output.
 * @returns exit code 0, 1 where the file cannot be written, 2 for unusable options
 */
export async function drawCommand(
  args: string[],
  print: (text: string) => void = (text) => process.stdout.write(text),
): Promise<number> {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: {
      svg: { type: "boolean" },
      scxml: { type: "boolean" },
      out: { type: "string" },
      flows: { type: "string" },
    },
  });
  const flow = readFlow(values.flows ?? ownFlows);
  const [scenario] = positionals;
  const fault =
    !scenario || !flow.scenarios[scenario]
      ? `Name a scenario: ${Object.keys(flow.scenarios).join(", ")}`
      : null;
  if (fault || !scenario || (values.svg && values.scxml)) {
    console.error(fault ?? "Choose one of --svg and --scxml");
    return 2;
  }
  const drawing = values.scxml ? drawScxml(flow, scenario) : drawSvg(flow, scenario);
  if (!values.out) {
    print(drawing);
    return 0;
  }
  try {
    writeDrawing(values.out, drawing);
    return 0;
  } catch (fault) {
    console.error(`The drawing cannot be written. ${reasonOf(fault)}`);
    return 1;
  }
}

/** A drawing takes the place of a drawing, and of nothing else. */
function writeDrawing(path: string, drawing: string, files = realFiles): void {
  const there = files.statSync(path, { throwIfNoEntry: false });
  if (there && !there.isFile()) {
    // A device or a pipe takes what it gets; a folder says that it is one.
    files.writeFileSync(path, drawing);
    return;
  }
  if (there && there.size > 0 && !/^<(svg|scxml|\?xml)\b/.test(files.readFileSync(path, "utf8")))
    throw new Refusal(`${path} is there already and is no drawing. Move it away, or name another file`);
  const half = `${path}.${process.pid}.half`;
  try {
    files.writeFileSync(half, drawing, { flag: "wx" });
    files.renameSync(half, path);
  } catch (fault) {
    removeQuietly(half, files);
    throw fault;
  }
}
