import { useEffect, useRef, useState } from "preact/hooks";
import type { Carried, Texts } from "../../../turn/index.ts";
import type { MoreProps } from "../../frame/index.ts";
import { Sharing } from "../sharing/index.ts";

/** The menu's entry that moves the search to another phone: by a code for its camera, or by a link to send. */
export function Carry({ view, services, texts, isListed, leave }: MoreProps) {
  const [carried, setCarried] = useState<Carried | "failed" | null>(null);
  const box = useRef<HTMLDivElement>(null);
  // An older answer would be carried.
  useEffect(() => setCarried(null), [view.turn?.turn, view.lines.length]);
  useEffect(() => {
    if (carried) box.current?.focus();
  }, [carried]);
  const open = () =>
    leave(() => {
      services.carry().then(setCarried, () => setCarried("failed"));
    });
  if (isListed && view.lines[0])
    return (
      <div class="ask">
        <button type="button" class="quiet" onClick={open}>
          {texts("carry.open")}
        </button>
      </div>
    );
  if (!carried || isListed) return null;
  return (
    <div class="ask carry" ref={box} tabIndex={-1}>
      {carried === "failed" ? <p>{texts("carry.failed")}</p> : <Shown carried={carried} texts={texts} />}
      <button type="button" class="quiet" onClick={() => leave(() => setCarried(null))}>
        {texts("carry.close")}
      </button>
    </div>
  );
}

function Shown({ carried: { link, code, words }, texts }: { carried: Carried; texts: Texts }) {
  return (
    <>
      <p>{texts(code ? "carry.scan" : "carry.long")}</p>
      {code && <Code rows={code} label={texts("carry.code")} />}
      <Sharing
        text={link}
        isLink
        labels={{ share: texts("carry.share"), copy: texts("carry.copy"), text: texts("carry.link") }}
        texts={texts}
      />
      <p class="small">{texts("carry.private")}</p>
      {words[0] && (
        <>
          <p class="small">{texts("carry.words")}</p>
          <ul class="small">
            {words.map((each) => (
              <li key={each}>
                <bdi>{each}</bdi>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** With the four dots of clear margin that ISO/IEC 18004 asks for; dark on light in any colours, as cameras expect. */
function Code({ rows, label }: { rows: boolean[][]; label: string }) {
  const size = rows.length + 8;
  const dots = rows.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x + 4} ${y + 4}h1v1h-1z` : "")));
  return (
    <svg class="code" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label}>
      <path fill="#fff" d={`M0 0h${size}v${size}H0z`} />
      <path d={dots.join("")} />
    </svg>
  );
}
