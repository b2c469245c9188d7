import { useEffect, useRef, useState } from "preact/hooks";
import { calendarFile } from "../../../measuring/index.ts";
import type { ScreenProps } from "../../frame/index.ts";
import { localeOf, Reminder } from "../reading/index.ts";
import { leadOn } from "./lead-on.ts";
import { Stages } from "./stages.tsx";

const REFRESH_MS = 30_000;
const MINUTE_MS = 60_000;
/** Nobody walks away from a shorter wait, nor needs a calendar for it. */
const REMIND_FROM_MS = 60 * MINUTE_MS;

/** So many minutes in words; whole hours have no minutes beside them. */
function leftText(minutes: number, texts: ScreenProps["texts"]): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return texts("measure.wait-minutes", { count: rest });
  return rest === 0
    ? texts("measure.wait-hours", { count: hours })
    : texts("measure.wait-left", { hours, minutes: rest });
}

/** How long is left and when it ends, by the clock; a page left open overnight shows the right time when looked at. */
export function WaitScreen({ turn, services, texts }: ScreenProps) {
  const { heading: title, wait } = turn;
  const [now, setNow] = useState(() => Date.parse(services.now()));
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const look = () => setNow(Date.parse(services.now()));
    const timer = setInterval(look, REFRESH_MS);
    document.addEventListener("visibilitychange", look);
    const root = place.current?.getRootNode() as Document | ShadowRoot | undefined;
    return () => {
      // Nobody has tapped: the time has come.
      if (root && wait && Date.parse(services.now()) >= Date.parse(wait.until)) leadOn(root);
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, []);
  if (!wait) return null;
  const [from, until] = [Date.parse(wait.from), Date.parse(wait.until)];
  // Rounded up: nobody should open the freezer a minute early.
  const minutes = Math.max(0, Math.ceil((until - now) / MINUTE_MS));
  const { format } = new Intl.DateTimeFormat(localeOf(texts), {
    weekday: "long",
    hour: "numeric",
    minute: "2-digit",
  });
  const fileOf = () =>
    calendarFile({
      uid: `${turn.turn}-${wait.until}@fridgeside`,
      stamp: services.now(),
      starts: { instant: wait.until },
      title,
      notes: texts("measure.wait-notes"),
      // A page that was opened from a file or inside an app has no address that a calendar could go back to.
      url: /^https?:/.test(location.href) ? location.href : undefined,
    });
  return (
    <div class="waiting" ref={place}>
      <p class="left">{minutes > 0 ? leftText(minutes, texts) : texts("measure.wait-over")}</p>
      <progress aria-hidden="true" max={until - from} value={Math.min(until, now) - from} />
      {minutes > 0 && (
        <p>
          {texts("measure.wait-ends")} <time dateTime={wait.until}>{format(until)}</time>
        </p>
      )}
      <Stages stages={wait.inside} now={now} until={until} format={format} texts={texts} />
      {minutes > 0 && until - from >= REMIND_FROM_MS && <Reminder file={fileOf} name="wait" texts={texts} />}
    </div>
  );
}
