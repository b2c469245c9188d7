import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { drawScxml, drawSvg } from "../flow/draw/index.ts";
import { ownFlows, readFlow } from "./flows-folder.ts";

/**
 * `fridgeside draw <scenario> [--svg | --scxml] [--out file]`: one scenario's chart, to the file or to the output.
 * @returns exit code 0, or 2 for unusable options
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
  if (values.out) writeFileSync(values.out, drawing);
  else print(drawing);
  return 0;
}
