export type ScaleProps = {
  /** What the scale spans, in the reading's unit. */
  from: number;
  to: number;
  limit: number;
  better: "above" | "below";
  /** The reading with its doubt; `high` null means that it may be anything above `low`. */
  low: number;
  high: number | null;
  /** The reading itself, where it is one number. */
  value?: number;
  limitText: string;
  valueText: string;
};

/** A stretch around the limit in which a reading and its doubt are big enough to be seen. */
export function spanAround(limit: number, value: number, doubt: number): { from: number; to: number } {
  const half = Math.max(6 * doubt, 1.3 * Math.abs(value - limit) + 2 * doubt);
  return { from: limit - half, to: limit + half };
}

/**
 * A reading with its doubt against a limit: while the bar covers the limit nobody can say. The text beside it
 * says the same, so the drawing itself is silent.
 */
export function Scale({ from, to, limit, better, low, high, value, limitText, valueText }: ScaleProps) {
  const at = (place: number) => Math.max(0, Math.min(100, ((place - from) / (to - from)) * 100));
  const [start, end] = [at(low), at(high ?? to)];
  const middle = value === undefined ? (start + end) / 2 : at(value);
  // A word at 80 % of the scale has 80 % of itself before that place, so that none hangs out at a side.
  const words = (place: number) => ({ insetInlineStart: `${place}%`, "--at": `${place}%` });
  return (
    <div class={`scale ${better}`} style={{ "--limit": `${at(limit)}%` }} aria-hidden="true">
      <span class="limit-text" style={words(at(limit))}>
        {limitText}
      </span>
      <i class="side low" />
      <i class="side high" />
      <i class="limit" />
      <i class="doubt" style={{ insetInlineStart: `${start}%`, width: `${Math.max(1, end - start)}%` }} />
      {value !== undefined && <i class="value" style={{ insetInlineStart: `${middle}%` }} />}
      <span class="value-text" style={words(middle)}>
        {valueText}
      </span>
    </div>
  );
}
