import { useEffect, useState } from "preact/hooks";
import type { Texts } from "../../session/index.ts";
import type { ScreenProps } from "../chat/index.ts";
import { localeOf } from "./format.ts";

const REFRESH_MS = 30_000;
const MINUTE_MS = 60_000;

/** How long is left and when it ends, by the clock; a page left open overnight shows the right time when looked at. */
export function WaitScreen({ turn, services, texts }: ScreenProps) {
  const [now, setNow] = useState(() => Date.parse(services.now()));
  useEffect(() => {
    const look = () => setNow(Date.parse(services.now()));
    const timer = setInterval(look, REFRESH_MS);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, []);
  if (!turn.wait) return null;
  const [from, until] = [Date.parse(turn.wait.from), Date.parse(turn.wait.until)];
  const left = Math.max(0, until - now);
  const ends = new Intl.DateTimeFormat(localeOf(texts), {
    weekday: "long",
    hour: "numeric",
    minute: "2-digit",
  });
  const done = Math.max(0, Math.min(100, ((now - from) / (until - from)) * 100));
  return (
    <div class="wait">
      <p class="left">
        {left > 0 ? texts("measure.wait-left", { time: showSpan(texts, left) }) : texts("measure.wait-over")}
      </p>
      <div class="bar" aria-hidden="true">
        <i style={{ width: `${done}%` }} />
      </div>
      {left > 0 && (
        <p>
          {texts("measure.wait-ends")} <time dateTime={turn.wait.until}>{ends.format(until)}</time>
        </p>
      )}
    </div>
  );
}

/** Hours and minutes, rounded up: nobody should open the freezer a minute early. */
function showSpan(texts: Texts, span: number): string {
  const minutes = Math.ceil(span / MINUTE_MS);
  const parts: [number, string][] = [
    [Math.floor(minutes / 60), "hour"],
    [minutes % 60, "minute"],
  ];
  const said = parts
    .filter(([amount]) => amount > 0)
    .map(([amount, unit]) =>
      new Intl.NumberFormat(localeOf(texts), { style: "unit", unit, unitDisplay: "long" }).format(amount),
    );
  return new Intl.ListFormat(localeOf(texts), { type: "unit" }).format(said);
}
