import { useEffect, useState } from "preact/hooks";
import type { FoundPart, Plate, Services } from "../../../turn/index.ts";

/** What the shop answered; null while it is asked. */
export type Fitted = FoundPart | "broken" | null;

/** What was asked about the plate beside its model code: the variants to choose from, and the serial number. */
export type Asked = { variants?: string[]; serial?: boolean };

/** The answer that the plate names a variant which the shop's list has not; no plate reads like this. */
export const otherVariant = "not on the list";

/** Asks the shop for the part of a kind, and asks again whenever more was read off the plate. */
export function useFitted(model: string | null, kind: string, services: Services) {
  const [fitted, setFitted] = useState<Fitted>(null);
  const [plate, setPlate] = useState<Plate>({});
  const [asked, setAsked] = useState<Asked>({});
  const [attempt, setAttempt] = useState(0);

  useEffect(() => {
    if (model === null) return;
    let current = true;
    setFitted(null);
    services.partFor(model, kind, plate).then(
      (answer) => {
        if (!current) return;
        setFitted(answer);
        if (answer.kind === "unread" && answer.about === "variant") setAsked({ variants: answer.choices });
        else setAsked({ ...asked, serial: answer.kind === "unread" || plate.serial !== undefined });
      },
      () => current && setFitted("broken"),
    );
    return () => {
      current = false;
    };
  }, [model, kind, plate, attempt]);

  return {
    fitted,
    plate,
    asked,
    read(next: Plate) {
      // At once: what was offered for an earlier answer must not be tapped any more.
      setFitted(null);
      setPlate(next);
    },
    retry: () => setAttempt(attempt + 1),
  };
}

/** What is to be said of an answer, as the last part of its text's key; empty where an offer or a question says it. */
export function saidOf(fitted: Fitted, plate: Plate, asked: Asked): string {
  if (fitted === null || fitted === "broken") return fitted ?? "";
  const isAsked = asked.variants || asked.serial;
  const about = fitted.kind === "unread" ? fitted.about : asked.serial ? "serial" : "variant";
  const read = plate[about];
  if (fitted.kind === "unread") return read === null ? `unread-${about}` : "";
  if (fitted.kind === "no-part" && isAsked) return "no-part-read";
  if (fitted.kind !== "part") return fitted.kind;
  return isAsked ? `${about}-${read && read !== otherVariant ? "fits" : "any"}` : "";
}
