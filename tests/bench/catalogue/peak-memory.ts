import { writeFileSync } from "node:fs";

// Loaded before a command that knows nothing of it: only the process itself can tell its peak.
const file = process.env["PEAK_MEMORY_FILE"];
process.on("exit", () => {
  if (file) writeFileSync(file, String(process.resourceUsage().maxRSS * 1024));
});
