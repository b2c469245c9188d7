type Props = {
  /** Shares from 0 to 1 between which the truth lies; `high` null where nothing bounds it. */
  low: number;
  high: number | null;
  /** What the two ends of the bar stand for. */
  start: string;
  end: string;
};

const percent = (share: number) => `${Math.min(1, Math.max(0, share)) * 100}%`;

/** A share as a bar: surely so much, and perhaps as much again. The text beside it says the same. */
export function Bar({ low, high, start, end }: Props) {
  return (
    <div class="bar" aria-hidden="true">
      <i style={{ "--low": percent(low), "--high": percent(high ?? 1) }} />
      <span>{start}</span>
      <span>{end}</span>
    </div>
  );
}
