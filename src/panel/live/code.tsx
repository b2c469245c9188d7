import { useEffect, useState } from "preact/hooks";
import type { LiveRoom, Services, Texts } from "../../turn/index.ts";

/** Milliseconds between two looks at how long a code still works. */
const LOOK_MS = 10_000;

type Props = { code: NonNullable<LiveRoom["code"]>; services: Services; texts: Texts };

/** The code that an agent types, large, in its groups; how it is spelled on the phone, and how long it works. */
export function Code({ code: { text, until }, services, texts }: Props) {
  const [, look] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => look((times) => times + 1), LOOK_MS);
    return () => clearInterval(timer);
  }, []);
  const left = Math.ceil((until - Date.parse(services.now())) / 60_000);
  if (left <= 0) return <p>{texts("live.run-out")}</p>;
  const signs = [...text].filter((sign) => /\w/.test(sign));
  const { name, link } = services.shopHelp;
  return (
    <>
      <p>
        {link?.startsWith("tel:") ? (
          <>
            <a href={link}>{texts("live.call-shop", { shop: name || texts("ui.shop") })}</a>
            {". "}
            {texts("live.read")}
          </>
        ) : (
          texts("live.call")
        )}
      </p>
      <p class="live-code">
        <span class="visually-hidden">{texts("live.code", { spelled: signs.join(" ") })}</span>
        {text.split("-").map((group) => (
          <b key={group} aria-hidden="true">
            {group}
          </b>
        ))}
      </p>
      <details>
        <summary>{texts("live.letters")}</summary>
        <ol class="spelled">
          {signs.map((sign, at) => (
            <li key={at}>
              <b>{sign}</b> {texts(`live.spelling.${sign}`)}
            </li>
          ))}
        </ol>
      </details>
      <p class="small">
        {texts("live.minutes", { count: left })} {texts("live.private")}
      </p>
    </>
  );
}
