import type { Turn } from "../../turn/index.ts";

/** What we had changed in the home and is not put back yet, as chips. */
export function State({ turn }: { turn: Turn }) {
  if (!turn.changed[0]) return null;
  return (
    <ul class="state">
      {turn.changed.map(({ id, text }) => (
        <li key={id}>{text}</li>
      ))}
    </ul>
  );
}
