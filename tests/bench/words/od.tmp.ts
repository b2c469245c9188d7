import { methods } from "/work/wt/words/tests/bench/words/methods.ts";
import { judgeOpenData, readOpenData } from "/work/wt/words/tests/bench/words/open-data.ts";

const d = readOpenData("/work/shared/data/clinc150-small.json");
for (const m of methods) {
  const t = process.cpuUsage();
  console.log(m.name, await judgeOpenData(m, d), process.cpuUsage(t).user / 1e6);
}
