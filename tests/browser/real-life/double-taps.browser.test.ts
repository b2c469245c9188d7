import type { Locator } from "@playwright/test";
import { linesOf } from "../../../src/turn/index.ts";
import { atModelOfBin } from "../expected.ts";
import { Finger, type Pointer } from "../finger.ts";
import { says } from "../greeting.ts";
import type { PanelPage } from "../panel-page.ts";
import { expect, test } from "../panel-test.ts";

// What counts here is when the browser says that a tap was made.
test.use({ hand: "fast", clock: "real" });

type Case = {
  /** Comes to where the control is, tapping with this finger if need be. */
  open(panel: PanelPage, finger: Finger): Promise<void>;
  control(panel: PanelPage): Locator;
  /** What one tap leads to, and two would not. */
  onceOnly(panel: PanelPage): Promise<void>;
};

const words = (panel: PanelPage, key: string) => panel.button(panel.text(key));

async function hasEvents(panel: PanelPage, more: number): Promise<void> {
  expect(await panel.storedEvents()).toHaveLength(panel.session.log.events.length + more);
}

/** At the question about danger, with all that comes after it there. */
async function comesBackToOpening(panel: PanelPage, finger: Finger): Promise<void> {
  await panel.open();
  await finger.tap(words(panel, "checks.opening.symptom.answers.no-ice"));
  await expect(panel.heading).toHaveText(panel.text("checks.opening.danger.ask"));
}

const answers = (turn: string, answer: string, next: string, events = 1): Case => ({
  open: (panel, finger) =>
    turn === "opening.danger" ? comesBackToOpening(panel, finger) : panel.openWhere(turn),
  control: (panel) => words(panel, `checks.${turn}.answers.${answer}`),
  onceOnly: async (panel) => {
    await expect(panel.heading).toHaveText(panel.text(next));
    await hasEvents(panel, events);
  },
});

const spotOf = (panel: PanelPage, place: number) =>
  panel.host.getByText(panel.text("measure.seal-place", { place, places: 12 }));

const cases: Record<string, Case> = {
  "'nothing dangerous' of the opening": answers("opening.danger", "none", "checks.opening.supply.ask", 2),
  "a danger of the opening": answers("opening.danger", "gas", "dangers.gas.heading"),
  "an answer of the second question": answers("opening.symptom", "no-ice", "checks.opening.supply.ask"),
  "a line of a gate": {
    open: (panel) => panel.openWhere("supply-line.gate-water-supply"),
    control: (panel) => panel.host.getByRole("checkbox").first(),
    onceOnly: (panel) => expect(panel.host.getByRole("checkbox").first()).toBeChecked(),
  },
  "the words of a gate's line": {
    open: (panel) => panel.openWhere("supply-line.gate-water-supply"),
    control: (panel) => panel.host.getByText(panel.turn.gate?.items[0]?.text ?? "", { exact: true }),
    onceOnly: (panel) => expect(panel.host.getByRole("checkbox").first()).toBeChecked(),
  },
  "a gate's confirmation": {
    open: async (panel, finger) => {
      await panel.openWhere("supply-line.gate-water-supply");
      for (const box of await panel.host.getByRole("checkbox").all()) await finger.tap(box);
    },
    control: (panel) => panel.confirmButton,
    onceOnly: async (panel) => {
      await expect(panel.heading).toHaveText(panel.text("gates.pulled-out.ask"));
      await hasEvents(panel, 1);
      for (const box of await panel.host.getByRole("checkbox").all()) await expect(box).not.toBeChecked();
    },
  },
  "the start of the stopwatch": {
    open: (panel) => panel.openWhere("flow-test.run"),
    control: (panel) => words(panel, "measure.start"),
    onceOnly: (panel) => expect(words(panel, "measure.stop")).toBeVisible(),
  },
  "the stop of the stopwatch": {
    open: async (panel, finger) => {
      await panel.openWhere("flow-test.run");
      await finger.tap(words(panel, "measure.start"));
    },
    control: (panel) => words(panel, "measure.stop"),
    onceOnly: (panel) => expect(words(panel, "measure.start")).toBeVisible(),
  },
  "'show what it means' of counted and weighed cubes": {
    open: async (panel) => {
      await panel.openWhere("cube-weight.weigh", { "fresh-ice.look": "small" });
      for (const field of await panel.host.locator(".turn").getByRole("textbox").all())
        await field.fill("10");
    },
    control: (panel) => words(panel, "measure.show-result"),
    onceOnly: async (panel) => {
      await expect(words(panel, "measure.use")).toBeVisible();
      await hasEvents(panel, 0);
    },
  },
  "'use this' of counted and weighed cubes": {
    open: async (panel, finger) => {
      await panel.openWhere("cube-weight.weigh", { "fresh-ice.look": "small" });
      for (const field of await panel.host.locator(".turn").getByRole("textbox").all())
        await field.fill("10");
      await finger.tap(words(panel, "measure.show-result"));
    },
    control: (panel) => words(panel, "measure.use"),
    onceOnly: async (panel) => {
      await expect(words(panel, "measure.use")).toHaveCount(0);
      await hasEvents(panel, 1);
    },
  },
  "how the paper felt at a place of the seal": {
    open: (panel) => panel.openWhere("door-seal.paper-strip"),
    control: (panel) => words(panel, "measure.seal-grips"),
    onceOnly: (panel) => expect(spotOf(panel, 2)).toBeVisible(),
  },
  "'add to basket'": {
    open: async (panel, finger) => {
      await panel.openAt(atModelOfBin());
      const code = "TBY-744-K4.W";
      await panel.findModel(code);
      await panel.page.evaluate(() => {
        document.addEventListener("fridgeside-basket", () => document.body.append("asked once "));
      });
      await finger.tap(panel.button(`${panel.text("measure.mine")}: ${code}`));
    },
    control: (panel) => words(panel, "part.add").first(),
    onceOnly: async (panel) => {
      await expect(panel.page.getByText("asked once")).toHaveText(/(?<!asked once )asked once $/);
    },
  },
  "'start again' of the menu, which asks first": {
    open: async (panel, finger) => {
      await panel.openWhere("ice-maker-switch.look");
      await finger.tap(words(panel, "ui.menu"));
    },
    control: (panel) => words(panel, "ui.restart"),
    onceOnly: async (panel) => {
      await expect(panel.host.getByText(panel.text("ui.restart-ask"))).toBeVisible();
      await hasEvents(panel, 0);
    },
  },
  "its 'yes, start again'": {
    open: async (panel, finger) => {
      await panel.openWhere("ice-maker-switch.look");
      await finger.tap(words(panel, "ui.menu"));
      await finger.tap(words(panel, "ui.restart"));
    },
    control: (panel) => words(panel, "ui.restart-yes"),
    onceOnly: async (panel) => {
      await expect(panel.heading).toHaveText(panel.text("thread.hello"));
      expect(await panel.storedEvents()).toEqual([]);
    },
  },
  "'change' of an earlier answer": {
    open: async (panel, finger) => {
      await comesBackToOpening(panel, finger);
      await finger.tap(words(panel, "checks.opening.danger.answers.none"));
    },
    control: (panel) => panel.row(panel.text("checks.opening.symptom.name")),
    onceOnly: async (panel) => {
      await expect(panel.heading).toHaveText(panel.text("checks.opening.symptom.ask"));
      expect(await panel.storedEvents()).toHaveLength(1);
    },
  },
};

/** A thumb at its fastest and slowest, and a mouse; `npm run soak` takes them all on every control. */
const doubles: [Pointer, number][] = [
  ["touch", 330],
  ["mouse", 120],
  ["touch", 120],
  ["touch", 200],
];
const isSoak = process.env["SOAK"] === "all";

for (const [place, [what, { open, control, onceOnly }]] of Object.entries(cases).entries())
  test(`a double tap or click on ${what} counts once, however fast`, async ({ page, panel }) => {
    // Every control by the slowest touch, and by one other way in turn.
    const other = 1 + (place % 3);
    for (const [pointer, gap] of doubles.filter((_, index) => isSoak || index === 0 || index === other))
      await test.step(`${pointer}, ${gap} ms`, async () => {
        const finger = await Finger.on(page, pointer);
        await page.goto("blank.html");
        await page.evaluate(() => localStorage.clear());
        await open(panel, finger);
        await finger.tapTwice(control(panel), gap);
        await onceOnly(panel);
      });
  });

test("a double tap made while the rest is on its way counts once too", async ({ page, panel }) => {
  const finger = await Finger.on(page);
  let release = () => {};
  const held = new Promise<void>((resume) => {
    release = resume;
  });
  await page.route("**/parts/engine-*.js", (route) => held.then(() => route.continue()));
  await page.goto("index.html");
  await says(panel);
  await finger.tapTwice(words(panel, "checks.opening.danger.answers.none"), 330);
  release();
  await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
  // The first file answers; what it was is kept once the rest is there.
  await expect
    .poll(async () => (await panel.storedEvents()).length)
    .toBe(panel.session.log.events.length + 2);
});

test("on a phone that is busy for longer than the two taps lie apart, the second counts as little", async ({
  page,
  panel,
}) => {
  const finger = await Finger.on(page);
  const link = await page.context().newCDPSession(page);
  await link.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  await comesBackToOpening(panel, finger);
  // The work of the first tap, on the slowest of phones.
  await panel.host.evaluate((host) =>
    host.addEventListener("click", () => {
      for (const start = performance.now(); performance.now() - start < 800; );
    }),
  );
  await finger.tapTwice(words(panel, "checks.opening.danger.answers.none"), 330);
  await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
  await hasEvents(panel, 2);
});

test.describe("two taps half a second apart are both meant", () => {
  test("on two questions, at one place", async ({ page, panel }) => {
    const finger = await Finger.on(page);
    await comesBackToOpening(panel, finger);
    await page.evaluate(() =>
      addEventListener("click", ({ clientY }) => Object.assign(window, { tappedAt: clientY }), {
        once: true,
      }),
    );
    await finger.tapTwice(words(panel, "checks.opening.danger.answers.none"), 500, async () => {
      await expect(panel.heading).toHaveText(panel.text("checks.opening.supply.ask"));
      // The page is moved so that the finger is on an answer of the next question too.
      await panel.host.evaluate(async ({ shadowRoot }) => {
        for (let frame = 0; frame < 3; frame++) await new Promise(requestAnimationFrame);
        const { tappedAt } = window as never as { tappedAt: number };
        const { top, height } =
          shadowRoot?.querySelector(".dock button")?.getBoundingClientRect() ?? new DOMRect();
        scrollBy({ top: top + height / 2 - tappedAt, behavior: "instant" });
      });
    });
    await expect.poll(() => panel.storedEvents()).toHaveLength(2);
  });

  test("on a line of a gate, which is unticked again", async ({ page, panel }) => {
    const finger = await Finger.on(page);
    await panel.openWhere("supply-line.gate-water-supply");
    const box = panel.host.getByRole("checkbox").first();
    await finger.tapTwice(box, 500);
    await expect(box).not.toBeChecked();
  });

  test("on the stopwatch", async ({ page, panel }) => {
    const finger = await Finger.on(page);
    await panel.openWhere("flow-test.run");
    await finger.tapTwice(words(panel, "measure.start"), 500);
    await expect(words(panel, "measure.start")).toBeVisible();
  });

  test("on the seal", async ({ page, panel }) => {
    const finger = await Finger.on(page);
    await panel.openWhere("door-seal.paper-strip");
    await finger.tapTwice(words(panel, "measure.seal-grips"), 500);
    await expect(spotOf(panel, 3)).toBeVisible();
  });
});

test("a key held down gives one answer, and a double press too", async ({ page, panel }) => {
  await panel.openWhere("door-seal.paper-strip");
  await words(panel, "measure.seal-grips").focus();
  for (let repeat = 0; repeat < 10; repeat++) await page.keyboard.down("Enter");
  await page.keyboard.up("Enter");
  await page.keyboard.press("Enter");
  await expect(spotOf(panel, 2)).toBeVisible();
});

test("two presses of a key with another between them are both meant", async ({ page, panel }) => {
  await panel.openWhere("supply-line.gate-water-supply");
  const boxes = panel.host.getByRole("checkbox");
  await boxes.first().focus();
  for (const key of ["Space", "Tab", "Space"]) await page.keyboard.press(key);
  await expect(boxes.nth(0)).toBeChecked();
  await expect(boxes.nth(1)).toBeChecked();
});

test("a word in a field is still chosen by a double click", async ({ page, panel }) => {
  await panel.openWhere("opening.symptom");
  const field = panel.host.getByRole("textbox");
  await field.fill("leaks");
  await field.dblclick();
  await page.keyboard.type("drips");
  await expect(field).toHaveValue("drips");
  expect(linesOf(panel.session, panel.texts)).toHaveLength(1);
});
