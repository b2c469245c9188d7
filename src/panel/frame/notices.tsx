import type { Notice } from "../../turn/index.ts";

type Props = { notices: Notice[]; means: string; goOn(): void };

/**
 * What the last answer means, and what is to be told beside a turn, which is announced where it comes by itself. It comes
 * with the engine, as whatever there is to tell.
 */
export function Notices({ notices, means, goOn }: Props) {
  return (
    <>
      {means && <p class="means">{means}</p>}
      <div class="notices" role="status">
        {notices.map(({ id, text, goOn: label }) => (
          <div key={id} class="note">
            <p>{text}</p>
            {label && (
              <button type="button" onClick={() => goOn()}>
                {label}
              </button>
            )}
          </div>
        ))}
      </div>
    </>
  );
}
