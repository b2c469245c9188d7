import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { Services, Texts } from "../../../turn/index.ts";

type Props = {
  seconds: number;
  /** Counts up until it is stopped: a vessel is full when it is full. */
  up?: boolean;
  services: Services;
  texts: Texts;
  onStopped(seconds: number): void;
};

/**
 * Runs down the seconds of one fill, or counts them up, by the clock, never by counting ticks: a phone slows the ticks of a page
 * that is out of sight. Gives the time that truly passed, to a hundredth of a second: rounded to tenths, kitchen scales would be out more often than said.
 * A run that is over waits for a tap: nothing moves by itself under a hand that holds a jug.
 */
export function Stopwatch({ seconds, up, services, texts, onStopped }: Props) {
  const [elapsed, setElapsed] = useState<number | null>(null);
  const startedAt = useRef(0);
  const [over, setOver] = useState<number | null>(null);
  const running = elapsed !== null && over === null;
  const passed = () => (Date.parse(services.now()) - startedAt.current) / 1000;
  const shown = up ? Math.floor(elapsed ?? 0) : Math.max(0, Math.ceil(seconds - (elapsed ?? 0)));

  function stop(ran = passed()) {
    setElapsed(null);
    setOver(null);
    onStopped(Math.round(ran * 100) / 100);
  }

  useLayoutEffect(() => services.signal("soon"), []);

  // Not `useEffect`, which comes after the next paint: a tick before that would start a stopped watch again.
  useLayoutEffect(() => {
    if (!running) return;
    const awake = services.keepAwake();
    const timer = setInterval(() => {
      const now = passed();
      if (now >= seconds) {
        clearInterval(timer);
        services.signal("end");
        if (up) return stop(now);
        setOver(now);
      }
      setElapsed(now);
    }, 100);
    return () => {
      clearInterval(timer);
      awake.then((release) => release()).catch(() => {});
    };
  }, [running]);

  return (
    <>
      <p>{texts(up ? "measure.fill-how" : "measure.run-how", { count: seconds })}</p>
      <button
        type="button"
        class={`dial ${elapsed === null ? "idle" : ""}`}
        style={{ "--done": `${Math.min(100, ((elapsed ?? 0) / (up ? 60 : seconds)) * 100)}%` }}
        onClick={() => {
          if (over !== null) stop(over);
          else if (running) stop();
          else {
            startedAt.current = Date.parse(services.now());
            setElapsed(0);
            services.signal("tick");
          }
        }}
      >
        {elapsed !== null && (
          // A new one where a digit goes: what is centred anew would count as moved.
          <b key={`${shown}`.length} class="count" aria-hidden="true">
            {shown}
          </b>
        )}
        {texts(`measure.${over !== null ? "go-on" : running ? "stop" : "start"}`)}
      </button>
      <p class="visually-hidden" role="status">
        {over !== null && texts("measure.run-over")}
        {running && texts(up ? "measure.filling" : "measure.running", { count: seconds })}
      </p>
    </>
  );
}
