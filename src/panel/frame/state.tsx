import type { Texts, Turn } from "../../turn/index.ts";

/**
 * What we had changed in the home and is not put back yet, as chips; and about how many checks are left, with what it most
 * likely is on request.
 */
export function State({ turn: { changed, left, likely }, texts }: { turn: Turn; texts: Texts }) {
  if (!changed[0] && !left) return null;
  return (
    <div class="state">
      {changed[0] && (
        <ul>
          {changed.map(({ id, text }) => (
            <li key={id}>{text}</li>
          ))}
        </ul>
      )}
      {left > 0 && (
        <details>
          <summary>{texts("thread.left", { count: left })}</summary>
          <p>{texts(likely[0] ? "thread.likely" : "thread.open")}</p>
          <ol>
            {likely.map((cause) => (
              <li key={cause}>{cause}</li>
            ))}
          </ol>
        </details>
      )}
    </div>
  );
}
