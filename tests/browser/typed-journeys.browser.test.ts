import { soundAnswer } from "../session/reach.ts";
import { codeWith } from "./expected.ts";
import { journeys } from "./journeys.ts";
import { PanelPage } from "./panel-page.ts";
import { test } from "./panel-test.ts";
import { say, sayAnswer, sayComplaint, saysNoMore, useKeysAlone } from "./talk.ts";

/** As each is typed: in which English, and by what all else is pressed. */
const ways = [
  { language: "en-GB", path: "index.html", sessionName: "panel", hand: "keys" },
  { language: "en-US", path: "american.html", sessionName: "american", hand: "fingers" },
];

for (const { language, path, sessionName, hand } of ways)
  for (const [scenario, { sees, reports, part, ending }] of Object.entries(journeys))
    test(`${scenario}: said in the words of ${language}, with ${hand} alone, it comes to the same end`, async ({
      page,
    }) => {
      const panel = new PanelPage(page, { language, sessionName, axe: false });
      const letGo = hand === "keys" ? useKeysAlone(panel) : () => {};
      try {
        await panel.open(path);
        await panel.says(sees["opening.symptom"] as string | undefined, sayComplaint);
        await saysNoMore(panel);
        while (panel.turn.kind !== "ending" && panel.turn.kind !== "model") {
          const { turn, kind } = panel.turn;
          const answer = sees[turn] ?? soundAnswer(panel.session);
          if (turn === reports?.[0]) await panel.reportDanger(reports[1]);
          else if (kind === "choice" && typeof answer === "string") await sayAnswer(panel, answer);
          else await panel.give(answer);
        }
        if (part) {
          const code = codeWith(part);
          await say(panel, `it says ${code}`);
          await panel.host
            .locator(".heard")
            .getByRole("button", { name: panel.text("composer.yes") })
            .tap();
          const { turn } = panel.turn;
          await panel.took({
            type: "model-given",
            turn,
            code,
            typed: `it says ${code}`,
            at: await panel.now(),
          });
          await panel.seesPartFor(part, code);
        }
        const { outcome, ...more } = ending;
        await panel.seesEnding(outcome, more);
      } finally {
        letGo();
      }
    });
