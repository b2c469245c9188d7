import { useRef } from "preact/hooks";
import { type Handover, handoverText, type Texts } from "../../../turn/index.ts";
import { printPage } from "./print.ts";
import { Sharing } from "./sharing.tsx";

type Props = {
  handover: Handover;
  /** Its name, and the words of the buttons that send and copy it. */
  labels: Record<"name" | "share" | "copy", string>;
  texts: Texts;
};

/** Headings with lines below them, to read, to print and to hand on. */
export function Page({ handover, labels, texts }: Props) {
  const page = useRef<HTMLDivElement>(null);
  return (
    <>
      {/* No heading stands above the question's own. */}
      <div class="sum-up" ref={page}>
        <p>
          <b>{labels.name}</b>
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
      <Sharing text={handoverText(handover)} labels={{ ...labels, text: labels.name }} texts={texts}>
        <button type="button" onClick={() => printPage(page.current, texts("ui.title"))}>
          {texts("carry.print")}
        </button>
      </Sharing>
    </>
  );
}
