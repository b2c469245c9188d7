import { writeFileSync } from "node:fs";

// Loaded before a command that knows nothing of it: only the process itself can tell its peak.
const file = process.env["USAGE_FILE"];
process.on("exit", () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  const usage = { peak: maxRSS * 1024, cpu: (userCPUTime + systemCPUTime) / 1e6 };
  if (file) writeFileSync(file, JSON.stringify(usage));
});
