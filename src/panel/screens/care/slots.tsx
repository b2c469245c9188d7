import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Care, Texts } from "../../../turn/index.ts";
import type { MoreProps, ScreenProps } from "../../frame/index.ts";

/** `top`: what is asked a day later; `end`: what keeps it well. */
type Place = "top" | "end";
export type AfterEnding = ComponentType<ScreenProps & { at: Place }>;

/** What is shown after an ending, and in the menu of the machine. */
export type CareParts = {
  AfterCare: ComponentType<ScreenProps & { at: Place; care: Care }>;
  MachinePage: ComponentType<{ care: Care; texts: Texts }>;
};

/**
 * Makes the places for them. What stands there is fetched when it is to be seen; an ending is whole without it.
 * @param bring resolves with what stands there, once its texts are there too
 */
export function createCareSlots(bring: (texts: Texts) => Promise<CareParts>) {
  type Whole = CareParts & { care: Care };
  const get = async ({ services, texts }: Pick<MoreProps, "services" | "texts">): Promise<Whole> => {
    const [{ AfterCare, MachinePage }, care] = await Promise.all([bring(texts), services.care()]);
    return { AfterCare, MachinePage, care };
  };

  function AfterEnding(props: ScreenProps & { at: Place }) {
    const [whole, setWhole] = useState<Whole | null>(null);
    useEffect(() => {
      let isShown = true;
      get(props).then(
        (got) => isShown && setWhole(got),
        () => {},
      );
      return () => {
        isShown = false;
      };
    }, []);
    return whole && <whole.AfterCare {...props} care={whole.care} />;
  }

  /** The menu's entries: the record of the machine, and what forgets everything on a tap. */
  function Machine(props: MoreProps) {
    const { view, services, texts, isListed, leave } = props;
    const [shown, setShown] = useState<Whole | "failed" | null>(null);
    const box = useRef<HTMLDivElement>(null);
    // What is on it may have changed.
    useEffect(() => setShown(null), [view.turn?.turn, view.lines.length]);
    useEffect(() => {
      if (shown) box.current?.focus();
    }, [shown]);
    const open = () => leave(() => void get(props).then(setShown, () => setShown("failed")));
    if (isListed)
      return (
        <div class="ask">
          <button type="button" class="quiet machine" onClick={open}>
            {texts("care.machine.open")}
          </button>
          {view.turn?.ending?.outcome !== "stopped" && (
            <button type="button" class="quiet forget" onClick={() => leave(services.forget)}>
              {texts("care.forget")}
            </button>
          )}
        </div>
      );
    return (
      shown && (
        <div class="ask carry" ref={box} tabIndex={-1}>
          {shown === "failed" ? (
            <p>{texts("ui.lost")}</p>
          ) : (
            <shown.MachinePage care={shown.care} texts={texts} />
          )}
          <button type="button" class="quiet" onClick={() => leave(() => setShown(null))}>
            {texts("carry.close")}
          </button>
        </div>
      )
    );
  }

  return { AfterEnding, Machine };
}
