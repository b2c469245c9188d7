import type { Page } from "@playwright/test";
import { record, type Session } from "../../../src/session/index.ts";
import { turnOf } from "../../../src/turn/index.ts";
import { freshSession, morning, sessionAt } from "../expected.ts";
import { says } from "../greeting.ts";
import { keptText } from "../kept-logs.ts";
import { PanelPage } from "../panel-page.ts";
import { expect, test } from "../panel-test.ts";
import { type Fault, faults, type LaterFile, laterFiles, spoil } from "./faults.ts";

/* Each file that is fetched later, with each fault, on a first visit, in the middle of a wait and on a gate. */
const situations: [string, () => Session | null][] = [
  ["a first visit", () => null],
  ["a wait", () => sessionAt("wait-for-ice.wait")],
  [
    "a gate",
    () =>
      sessionAt("filter-seated.gate-water-supply", {
        "opening.symptom": "no-ice",
        "flow-without-filter.have": "no-plug",
      }),
  ],
];

/** Opens the page as somebody left it, with nothing else kept. */
async function arrive(page: Page, path: string, left: Session | null): Promise<void> {
  await page.goto("blank.html");
  await page.evaluate((log) => {
    localStorage.clear();
    if (log) localStorage.setItem("fridgeside:panel", log);
  }, left && keptText(left.log));
  // A little after the last act, so that a wait is still on.
  const last = left?.log.events.at(-1)?.at;
  if (last) await page.clock.setSystemTime(Date.parse(last) + 60_000);
  await page.goto(path);
}

async function reportDanger(panel: PanelPage): Promise<void> {
  await panel.button(panel.text("ui.danger")).tap();
  await panel.button(panel.text("checks.opening.danger.answers.gas")).last().tap();
  await expect(panel.heading).toHaveText(panel.text("dangers.gas.heading"));
}

async function answerOpening(panel: PanelPage): Promise<void> {
  await says(panel, "not-dispensed");
  await panel.button(panel.text("checks.opening.danger.answers.none")).tap();
  await panel.button(panel.text("checks.opening.changed.answers.nothing")).tap();
}

const isPart = (file: LaterFile) => file.route.includes("/parts/");

/** The panel says within five seconds that the rest does not come, keeps the tap, and goes on once it does. */
async function livesThrough(panel: PanelPage, file: LaterFile, fault: Fault, left: Session | null) {
  const { page } = panel;
  const { mend } = await spoil(page, file, fault);
  await arrive(page, file.page, left);
  const kept = await panel.storedText();
  const last = panel.button(panel.text("checks.opening.changed.answers.nothing"));
  if (!left) await answerOpening(panel);
  await page.clock.runFor(4500);
  const said = panel.host.getByRole("status").last();
  await expect(said).toContainText(panel.text(fault === "slow" ? "ui.slow" : "ui.lost"));
  await expect(said.getByRole("link")).toHaveText(/^Larder Lane Spares/);
  await expect(said.getByRole("link")).toHaveAttribute("href", /\/help\.html$/);
  if (!left) await expect(last).toHaveClass(/given/);
  await page.clock.runFor(15_500);
  expect(await panel.storedText()).toBe(kept);
  await mend();
  await page.clock.runFor(31_000);
  await seesWhereItWas(panel, left);
}

/** Where the answers lead that are given on a first visit: out of the opening, which needs nothing that comes later. */
const afterOpening = [
  ["danger", "none"],
  ["symptom", "not-dispensed"],
  ["changed", "nothing"],
].reduce((session, [turn, answer = ""]) => {
  const at = session.log.started;
  return record(session, { type: "answered", turn: `opening.${turn}`, answer, at }).session;
}, freshSession(morning));

async function seesWhereItWas(panel: PanelPage, left: Session | null): Promise<void> {
  const session = left ?? afterOpening;
  await expect(panel.heading).toHaveText(turnOf(session, panel.texts, session.log.started).heading);
}

/**
 * `FAULTS=all` takes every situation with every fault (90 cases); else each file meets every other fault, and each of
 * them one situation, in turn.
 */
const isWhole = process.env["FAULTS"] === "all";

for (const [row, file] of laterFiles.entries())
  for (const [column, fault] of faults.entries())
    test.describe(`${file.name}: ${fault}`, () => {
      test.use({ expectedFaults: /Failed to load|could not be loaded|MIME|SyntaxError|Unexpected/ });

      for (const [place, [situation, leave]] of situations.entries()) {
        if (!isWhole && ((row + column) % 2 || place !== (row + column / 2) % situations.length)) continue;
        test(`on ${situation} a danger is taken, nothing is lost, and it goes on or says what is wrong`, async ({
          page,
        }) => {
          const panel = new PanelPage(page, { axe: false, keeps: false });
          const left = leave();
          if (isPart(file)) await livesThrough(panel, file, fault, left);
          await spoil(page, file, fault);
          await arrive(page, file.page, left);
          if (!isPart(file)) {
            // The catalogue is needed at the end only.
            if (!left) await answerOpening(panel);
            await seesWhereItWas(panel, left);
          }
          await reportDanger(panel);
        });
      }
    });
