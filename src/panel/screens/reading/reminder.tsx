import { useRef, useState } from "preact/hooks";
import type { Texts } from "../../../turn/index.ts";

type Props = {
  /** Writes the calendar file (RFC 5545); asked for only once it is wanted. */
  file(): string;
  /** The file's name, without its ending. */
  name: string;
  texts: Texts;
};

/** Phones read a file some time after the tap; a minute is enough for the slowest. */
const KEEP_MS = 60_000;

/** Offers a date as a file for the person's own calendar. It is made on the device, and nothing is sent. */
export function Reminder({ file, name, texts }: Props) {
  const [said, setSaid] = useState<"" | "made" | "failed">("");
  const place = useRef<HTMLDivElement>(null);

  function offer() {
    try {
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([file()], { type: "text/calendar;charset=utf-8" }));
      setTimeout(() => URL.revokeObjectURL(link.href), KEEP_MS);
      if ("download" in link) {
        link.download = `${name}.ics`;
        place.current?.append(link);
        link.click();
        link.remove();
      } else if (!open((link as HTMLAnchorElement).href)) throw new Error("No window was opened");
      setSaid("made");
    } catch {
      setSaid("failed");
    }
  }

  return (
    <div class="reminder" ref={place}>
      <button type="button" onClick={offer}>
        {texts("measure.reminder-offer")}
      </button>
      <p role="status" class={said === "failed" ? "wrong" : "small"}>
        {said && texts(`measure.reminder-${said}`)}
      </p>
    </div>
  );
}
