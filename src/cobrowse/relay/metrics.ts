/** What is counted, and what is measured when somebody asks. */
const counted = {
  connections_opened_total: "Connections that were taken",
  connections_refused_total: "Connections that were not, and messages that ended one, by reason",
  rooms_opened_total: "Rooms opened",
  agents_joined_total: "Agents that came in by a code",
  codes_failed_total: "Codes, tokens and secrets that were wrong",
  entries_kept_total: "Entries that were numbered",
  entries_repeated_total: "Messages that had been numbered before",
  messages_unkept_total: "Messages that the store could not be reached for; their sender repeats them",
  messages_dropped_total: "Messages that came too fast",
  lines_cut_total: "Lines cut because their reader was too slow or silent",
} as const;

/** A counter's name. */
export type Counter = keyof typeof counted;

/** Counters of one relay. */
export type Metrics = {
  count(name: Counter, why?: string): void;
  /** All of them in Prometheus' text format 0.0.4; the measured values come with their explanation. */
  text(measured: Record<string, [value: number, help: string]>): string;
};

/** Counters at zero. A reason is one of the relay's own words, never one that came from outside. */
export function createMetrics(): Metrics {
  const values = new Map<Counter, Map<string, number>>();
  return {
    count: (name, why = "") => {
      const reasons = values.get(name) ?? new Map<string, number>();
      values.set(name, reasons.set(why, (reasons.get(why) ?? 0) + 1));
    },
    text: (measured) => {
      const counters = Object.entries(counted).map(([name, help]) => {
        const reasons = [...(values.get(name as Counter) ?? new Map([["", 0]]))];
        const lines = reasons.map(([why, value]) => [why && `{reason="${why}"}`, value] as const);
        return metric(name, "counter", help, lines);
      });
      const gauges = Object.entries(measured).map(([name, [value, help]]) =>
        metric(name, "gauge", help, [["", value]]),
      );
      return [...counters, ...gauges].join("");
    },
  };
}

function metric(name: string, type: string, help: string, lines: (readonly [string, number])[]): string {
  const full = `fridgeside_relay_${name}`;
  const rows = lines.map(([labels, value]) => `${full}${labels} ${value}\n`).join("");
  return `# HELP ${full} ${help}\n# TYPE ${full} ${type}\n${rows}`;
}
