import { useEffect, useRef, useState } from "preact/hooks";
import type { Handover } from "../../../turn/index.ts";
import type { MoreProps } from "../../frame/index.ts";
import { Page } from "../sharing/index.ts";

type Shown = Handover | "failed" | null;

/** The menu's entries that sum a search up on a page: this one, and one that a link has brought and nobody went on with. */
export function SumUp({ view, services, texts, isListed, leave }: MoreProps) {
  const [shown, setShown] = useState<Shown>(null);
  const box = useRef<HTMLDivElement>(null);
  // What is said next is not on it.
  useEffect(() => setShown(null), [view.turn?.turn, view.lines.length]);
  useEffect(() => {
    if (shown) box.current?.focus();
  }, [shown]);
  const open = (of: "shown" | "brought") => () =>
    leave(() => {
      services.handover(of).then(setShown, () => setShown("failed"));
    });
  const labels = {
    name: texts("carry.summary"),
    share: texts("carry.share-summary"),
    copy: texts("carry.copy-summary"),
  };
  const isBrought = view.notices.some(({ id }) => id === "carried");
  if (isListed && (view.lines[0] || isBrought))
    return (
      <div class="ask">
        {isBrought && (
          <button type="button" class="quiet" onClick={open("brought")}>
            {texts("carry.brought")}
          </button>
        )}
        {view.lines[0] && (
          <button type="button" class="quiet" onClick={open("shown")}>
            {texts("carry.sum-up")}
          </button>
        )}
      </div>
    );
  if (!shown || isListed) return null;
  return (
    <div class="ask carry" ref={box} tabIndex={-1}>
      {shown === "failed" ? (
        <p>{texts("carry.failed")}</p>
      ) : (
        <Page handover={shown} labels={labels} texts={texts} />
      )}
      <button type="button" class="quiet" onClick={() => leave(() => setShown(null))}>
        {texts("carry.close")}
      </button>
    </div>
  );
}
