import { useEffect, useState } from "preact/hooks";
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
  // Rounded up: nobody should open the freezer a minute early.
  const minutes = Math.max(0, Math.ceil((until - now) / MINUTE_MS));
  const ends = new Intl.DateTimeFormat(localeOf(texts), {
    weekday: "long",
    hour: "numeric",
    minute: "2-digit",
  });
  return (
    <div class="waiting">
      <p class="left">
        {minutes > 0
          ? texts(minutes < 60 ? "measure.wait-minutes" : "measure.wait-left", {
              hours: Math.floor(minutes / 60),
              minutes: minutes % 60,
            })
          : texts("measure.wait-over")}
      </p>
      <progress aria-hidden="true" max={until - from} value={Math.min(until, now) - from} />
      {minutes > 0 && (
        <p>
          {texts("measure.wait-ends")} <time dateTime={turn.wait.until}>{ends.format(until)}</time>
        </p>
      )}
    </div>
  );
}
