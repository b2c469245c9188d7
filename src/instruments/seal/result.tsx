import type { ScreenProps } from "../../panel/frame/index.ts";
import { VerdictCard } from "../../panel/screens/reading/index.ts";
import { assessSeal } from "./assess.ts";
import type { SealLimits } from "./limits.ts";
import type { SealReading } from "./reading.ts";

type Props = Omit<ScreenProps, "services" | "picture"> & {
  reading: SealReading;
  limits: SealLimits;
  places: readonly string[];
};

/** What the places look like together, and which of them slip, before it is used. */
export function SealResult({ limits, places, ...props }: Props) {
  const { reading, texts } = props;
  const { pattern, verdict, slips, at, weak } = assessSeal(reading, limits);
  const tried = reading.spots.filter(Boolean).length;
  return (
    <VerdictCard
      {...props}
      verdict={verdict}
      heading={texts(`measure.seal-${pattern}`)}
      look={/passes|unclear/.test(verdict) ? verdict : "fails"}
      doubted={verdict === "unclear"}
    >
      <p>{texts(`measure.seal-${pattern}-means`)}</p>
      {tried < places.length && <p>{texts("measure.seal-tried", { count: tried, places: places.length })}</p>}
      {slips > 0 && (
        <>
          <p>{texts("measure.seal-slipping", { count: slips })}</p>
          <ul class="slipping">
            {at.map((place) => (
              <li key={place}>{places[place]}</li>
            ))}
          </ul>
        </>
      )}
      {weak > 0 && <p>{texts("measure.seal-weak", { count: weak })}</p>}
    </VerdictCard>
  );
}
