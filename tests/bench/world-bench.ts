import { parseArgs } from "node:util";
import { compileFlow, guideOf, inRegion } from "../../src/compile/index.ts";
import { regionIn } from "../../src/guide/index.ts";
import { createTexts } from "../../src/turn/index.ts";
import { readFlow, readLocales } from "../../src/workbench/build/index.ts";
import {
  byFault,
  byScenario,
  drawHome,
  followList,
  hazardList,
  type Last,
  mainTable,
  type Outcome,
  outcomeOf,
  shareTable,
  talk,
  unknownList,
  type Visit,
  worstFirst,
} from "./world/index.ts";

const number = (text: string | undefined, instead: number) => (text === undefined ? instead : Number(text));

/**
 * `npm run bench -- world`: sends homes of a physical world through the session, and through the list that shops
 * print, and says how they ended.
 */
export function benchWorld(args: string[]): void {
  const { values } = parseArgs({
    args,
    options: {
      homes: { type: "string" },
      seed: { type: "string" },
      perfect: { type: "boolean" },
      "by-fault": { type: "boolean" },
      shares: { type: "boolean" },
      trace: { type: "string" },
    },
  });
  if (values.shares) {
    console.log(shareTable());
    return;
  }
  const homes = number(values.homes, 3000);
  const seed = values.seed ?? "1";
  const ask = createAsking();
  if (values.trace !== undefined) {
    trace(values.trace, { homes, seed, perfect: !!values.perfect, ask });
    return;
  }
  const began = performance.now();
  const ours = (perfect: boolean) => seeds(homes, seed).map((one) => outcomeOf(ask(one, perfect)));
  const list = (last: Last) =>
    seeds(homes, seed).map((one) => outcomeOf(followList(drawHome(one), false, last)));
  const columns: Record<string, Outcome[]> = values.perfect ? { perfect: ours(true) } : { ours: ours(false) };
  if (!values.perfect) {
    columns["list: ice maker"] = list("ice-maker");
    columns["list: call"] = list("professional");
  }
  const [main = []] = Object.values(columns);
  console.log(`${homes} homes, seed ${seed}, ${((performance.now() - began) / 1000).toFixed(0)} s\n`);
  console.log(mainTable(columns));
  console.log(`\nBy complaint\n${worstFirst(main, byScenario)}`);
  console.log(`\nBy true fault, worst first\n${worstFirst(main, byFault, values["by-fault"] ? 200 : 20)}`);
  console.log(`\nHazardous steps in the wrong state\n${hazardList(main) || "  none"}`);
  console.log(`\nTurns and causes without a rule here\n${unknownList(main) || "  none"}`);
}

const seeds = (homes: number, seed: string) =>
  Array.from({ length: homes }, (_, place) => `${seed}-${place}`);

type Ask = (seed: string, perfect: boolean) => Visit;

function createAsking(): Ask {
  const flow = readFlow();
  const compiled = compileFlow(flow);
  const guide = guideOf(inRegion(compiled, regionIn(flow.regions, "en-GB")));
  const texts = createTexts(readLocales(), "en-GB", guide.flow);
  return (seed, perfect) => talk(guide, texts, drawHome(seed, perfect), perfect);
}

/** Prints a few whole conversations that ended wrong: of homes with a fault, or that ended in one way. */
function trace(
  fault: string,
  { homes, seed, perfect, ask }: { homes: number; seed: string; perfect: boolean; ask: Ask },
): void {
  let shown = 0;
  for (const one of seeds(homes, seed)) {
    const home = drawHome(one, perfect);
    const visit = ask(one, perfect);
    const { verdict, ended } = outcomeOf(visit);
    if (verdict === "right" || ![...home.faults.map(({ id }) => id), verdict].includes(fault)) continue;
    const { movesMachine, takesPanelOff, waits } = home.person;
    console.log(
      `\n== home ${one}: ${home.faults.map(({ id }) => id).join(" + ")}, ${home.changed}, complains of ${home.complaint.trouble}`,
    );
    console.log(
      `   can: ${JSON.stringify({ movesMachine, takesPanelOff, waits, tap: home.machine.tapInReach })}`,
    );
    for (const { turn, said } of visit.turns) console.log(`   ${turn.padEnd(34)} ${said}`);
    console.log(`   => ${ended} ${visit.ending?.causes.join(", ")}: ${verdict}`);
    if (++shown === 5) break;
  }
  if (!shown) console.log(`None of ${homes} homes with "${fault}" ended wrong.`);
}
