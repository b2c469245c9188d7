import { counts } from "../soak/counts.ts";
import { describeAnswering } from "./answering.ts";

describeAnswering(counts.answering, 79);
