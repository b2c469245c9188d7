import { showNumber } from "../../panel/screens/reading/index.ts";
import type { Texts } from "../../turn/index.ts";

type Props = {
  /** How many times as long as at the target; null where water does not freeze at all. */
  ratio: { value: number; range: { low: number; high: number | null } } | null;
  target: string;
  texts: Texts;
};

/** What a temperature does to the time that a tray takes to freeze, as two bars and in a sentence. */
export function FreezingTime({ ratio, target, texts }: Props) {
  const times = ratio?.value ?? 4;
  const longest = Math.max(1, times);
  const bar = (length: number, text: string) => (
    <div style={{ "--length": `${(length / longest) * 100}%` }}>
      <i />
      <span>{text}</span>
    </div>
  );
  return (
    <>
      <p>
        {ratio
          ? texts("measure.freezing", { times: showNumber(texts, ratio.value), target })
          : texts("measure.freezing-never")}
      </p>
      <div class="freezing" aria-hidden="true">
        {bar(1, texts("measure.freezing-target", { target }))}
        {bar(times, texts(ratio ? "measure.freezing-here" : "measure.freezing-none"))}
      </div>
    </>
  );
}
