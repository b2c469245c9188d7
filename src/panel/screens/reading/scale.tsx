export type ScaleProps = {
  limit: number;
  better: "above" | "below";
  /** The reading with its doubt, in the limit's unit; `high` null means that it may be anything above `low`. */
  low: number;
  high: number | null;
  limitText: string;
  valueText: string;
};

/**
 * A reading with its doubt, drawn around a limit in the middle: while the bar covers the limit nobody can say.
 * The text beside it says the same, so the drawing itself is silent.
 */
export function Scale({ limit, better, low, high, limitText, valueText }: ScaleProps) {
  const top = high ?? low + limit;
  const half = 1.2 * Math.max(Math.abs(low - limit), Math.abs(top - limit), 2 * (top - low));
  const at = (place: number) => 50 + ((place - limit) / half) * 50;
  const start = at(low);
  const width = Math.max(1, (high === null ? 100 : at(high)) - start);
  const middle = `${start + width / 2}%`;
  return (
    <div class={`scale ${better}`} aria-hidden="true">
      <span class="limit-text">{limitText}</span>
      <i class="side low" />
      <i class="side high" />
      <i class="limit" />
      <i class="doubt" style={{ insetInlineStart: `${start}%`, width: `${width}%` }} />
      {/* A word at 80 % of the scale has 80 % of itself before that place, so that it never hangs out at a side. */}
      <span class="value-text" style={{ insetInlineStart: middle, "--at": middle }}>
        {valueText}
      </span>
    </div>
  );
}
