import { useEffect, useRef, useState } from "preact/hooks";
import { type Handover, handoverText, type Texts } from "../../../turn/index.ts";
import type { MoreProps } from "../../frame/index.ts";
import { printPage, Sharing } from "../sharing/index.ts";

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
      {shown === "failed" ? <p>{texts("carry.failed")}</p> : <Page handover={shown} texts={texts} />}
      <button type="button" class="quiet" onClick={() => leave(() => setShown(null))}>
        {texts("carry.close")}
      </button>
    </div>
  );
}

function Page({ handover, texts }: { handover: Handover; texts: Texts }) {
  const page = useRef<HTMLDivElement>(null);
  return (
    <>
      {/* No heading stands above the question's own. */}
      <div class="sum-up" ref={page}>
        <p>
          <b>{texts("carry.summary")}</b>
        </p>
        <p class="small">{handover.title}</p>
        <dl>
          {handover.parts.map(({ heading, lines }) => (
            <div key={heading}>
              <dt>{heading}</dt>
              {lines.map((line) => (
                <dd key={line}>
                  <bdi>{line}</bdi>
                </dd>
              ))}
            </div>
          ))}
        </dl>
      </div>
      <Sharing
        text={handoverText(handover)}
        labels={{
          share: texts("carry.share-summary"),
          copy: texts("carry.copy-summary"),
          text: texts("carry.summary"),
        }}
        texts={texts}
      >
        <button type="button" onClick={() => printPage(page.current, texts("ui.title"))}>
          {texts("carry.print")}
        </button>
      </Sharing>
    </>
  );
}
