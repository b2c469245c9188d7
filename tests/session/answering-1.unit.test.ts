import { describeAnswering } from "./answering.ts";

// Two files of half the walks each, so that two of them can run at a time.
describeAnswering(10_000, 79);
