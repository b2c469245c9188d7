import { tradeListFor } from "./trade-list.ts";
import { buyPart, doCheck, end, movesNow, provedNow, type Visit, waitForIce } from "./visit.ts";

/** A way of going about it: takes a visit to its end. */
export type Policy = (visit: Visit) => void;

/** What the fixed list sells without proof: a filter past its age. */
const soldByAge = { check: "filter-age", outcome: "due", cause: "filter-clogged" };
/** After these the list says to wait up to a day. */
const waitedAfter = ["reset"];

/**
 * The trade's fixed list: every check in one order for everybody, put right what is found, wait a day after
 * anything put right, a reset or a new filter. At the end it sells an ice maker, or sends for a professional.
 */
export function fixedList(last: "ice-maker" | "professional"): Policy {
  return (visit) => {
    for (const check of tradeListFor(visit.home.scene)) {
      const outcome = doCheck(visit, check);
      if (visit.ending) return;
      if (outcome === null) continue;
      const { flow, routes } = visit.home.scene;
      const route = routes[check]?.[outcome];
      const byAge = check === soldByAge.check && outcome === soldByAge.outcome ? [soldByAge.cause] : [];
      const found = [...(route?.finds ?? []), ...byAge].filter((cause) => !route?.fixes.includes(cause));
      const worst = found.map((cause) => flow.causes[cause]).find((rule) => rule?.remedy === "professional");
      if (worst) return end(visit, { how: "professional", cause: null, due: false });
      const part = found.find((cause) => flow.causes[cause]?.remedy === "part");
      if (part) {
        const kind = flow.causes[part]?.part ?? "";
        visit.minutes += flow.parts[kind]?.minutes ?? 0;
        if (buyPart(visit, part))
          visit.present = visit.present.filter((fault) => flow.causes[fault]?.part !== kind);
      }
      if (part || visit.fixed.length || waitedAfter.includes(check)) waitForIce(visit);
      if (visit.ending) return;
    }
    if (last === "professional") return end(visit, { how: "professional", cause: null, due: false });
    buyPart(visit, "ice-maker-faulty");
    end(visit, { how: "part", cause: "ice-maker-faulty", due: false });
  };
}

/** The list of the householder's own scenario, with its conditions and proofs, in the trade's order. */
export function scenarioList(): Policy {
  return (visit) => {
    for (let turns = 0; turns < 100; turns++) {
      const proved = provedNow(visit)[0];
      if (proved) {
        const part = visit.home.scene.flow.causes[proved.cause]?.remedy === "part";
        if (part) buyPart(visit, proved.cause, proved.due);
        return end(visit, { how: part ? "part" : "professional", cause: proved.cause, due: proved.due });
      }
      const [next] = movesNow(visit);
      if (!next) return end(visit, { how: "professional", cause: null, due: false });
      if (next.waits) waitForIce(visit, next.check);
      else doCheck(visit, next.check);
      if (visit.ending) return;
    }
    throw new Error(`A list without end in ${visit.home.scene.id}`);
  };
}
