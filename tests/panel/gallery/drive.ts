import type { Page } from "playwright";

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name }).first().click();

/** Runs the stopwatch to its end by a clock of its own, then says how much water there is. */
async function pour(page: Page, volume: string) {
  await page.clock.install();
  await button(page, "Start");
  await page.clock.runFor(10_200);
  await button(page, "Next");
  await page.getByRole("textbox").fill(volume);
}

async function type(page: Page, typed: string, submit: string | RegExp) {
  await page.getByRole("textbox").first().fill(typed);
  await button(page, submit);
}

/** Says how the paper felt, place by place: g, d and s, or a dash for what cannot be reached. */
async function pull(page: Page, felt: string) {
  const names: Record<string, string> = { g: "Grips", d: "Drags", s: "Slips", "-": "Can't reach it" };
  await page.clock.install();
  for (const each of felt) {
    await page.getByRole("button", { name: names[each] ?? "", exact: true }).click();
    // So soon after a tap the next one would count as the same tap again.
    await page.clock.runFor(1000);
  }
}

const show = /Show what it means/;

/** What a hand does before a fixture can be looked at; the others are looked at as they come. */
export const hands: Record<string, (page: Page) => Promise<void>> = {
  "choice-asked": (page) => button(page, /^Change: Is/),
  "footer-danger": (page) => button(page, "Danger?"),
  "footer-restart": (page) => button(page, "Start again"),
  "choice-open": (page) => page.getByText("Why this check").click(),
  gate: async (page) => {
    await page.getByRole("checkbox").first().check();
    await button(page, "I have done all of this");
  },
  "flow-running": async (page) => {
    await page.clock.install();
    await button(page, "Start");
    await page.clock.runFor(3_300);
  },
  "flow-volume": (page) => pour(page, "145"),
  "flow-scales": async (page) => {
    await pour(page, "145");
    await page.getByText("g", { exact: true }).first().click();
  },
  "flow-result": async (page) => {
    await pour(page, "210");
    await button(page, show);
  },
  "flow-fails": async (page) => {
    await pour(page, "60");
    await button(page, show);
  },
  "flow-unclear": async (page) => {
    await pour(page, "150");
    await button(page, show);
  },
  "flow-bad": async (page) => {
    await pour(page, "12abc");
    await button(page, show);
  },
  "temperature-result": (page) => type(page, "-9", show),
  "temperature-bad": (page) => type(page, "180", show),
  "filter-age-date": async (page) => {
    await page.getByText("I know the day").click();
    await page.getByLabel("Day", { exact: true }).fill("31");
    await page.getByLabel("Month", { exact: true }).fill("2");
    await page.getByLabel("Year", { exact: true }).fill("2025");
    await button(page, /how old/);
  },
  "filter-age-season": async (page) => {
    await page.getByText("I know the season").click();
    await page.getByText("Autumn").click();
    await type(page, "2024", /how old/);
  },
  "filter-age-moved": async (page) => {
    await page.getByText("Not since I moved in").click();
    await page.getByLabel("Month", { exact: true }).selectOption("3");
    await type(page, "2023", /how old/);
  },
  "seal-half": (page) => pull(page, "ggds-gs"),
  "seal-two": async (page) => {
    await page.getByText("Two doors").click();
    await pull(page, "ggd");
  },
  "seal-drawer": async (page) => {
    await page.getByText("A drawer").click();
    await pull(page, "ggdss");
  },
  "seal-result": (page) => pull(page, "ggdgsggsgsgg"),
  "seal-unclear": async (page) => {
    await pull(page, "ggs");
    await button(page, show);
  },
  "wait-reminded": (page) => button(page, "Put it in my calendar"),
  "model-exact": (page) => type(page, "wx40b8e", "Find my model"),
  "model-near": (page) => type(page, "WX40BBE", "Find my model"),
  "model-plate": (page) => page.getByText("Freezer on top").click(),
  "model-plate-below": (page) => page.getByText("Freezer below", { exact: true }).click(),
  "model-plate-side": (page) => page.getByText("Freezer at the side").click(),
  "model-plate-doors": (page) => page.getByText("Two doors, freezer below").click(),
  "model-twin": (page) => type(page, "NTW 254NH/A0", "Find my model"),
  "model-more": (page) => type(page, "WXR1200", "Find my model"),
  "model-digits": (page) => type(page, "9250314480", "Find my model"),
  "model-unknown": (page) => type(page, "ZZ9", "Find my model"),
  "model-broken": (page) => type(page, "WX40B8E", "Find my model"),
  "model-long": (page) => type(page, "W".repeat(300), "Find my model"),
  "model-slow": async (page) => {
    await type(page, "WX40B8E", "Find my model");
    await page.getByText("Looking it up").waitFor();
  },
  "part-variant-fits": (page) => page.getByText("V1", { exact: true }).click(),
  "part-variant-other": (page) => page.getByText("Another one").click(),
  "part-variant-lost": (page) => page.getByText("I can't find it").click(),
  "part-variant-serial": async (page) => {
    await page.getByText("V2", { exact: true }).click();
    await type(page, "4711", "Show the part");
  },
  "part-serial-empty": (page) => button(page, "Show the part"),
  "part-serial-unlike": (page) => type(page, "K12-77", "Show the part"),
  "part-serial-fits": (page) => type(page, "4711", "Show the part"),
  "part-serial-lost": (page) => button(page, "I can't find it"),
  "part-failed": (page) => button(page, "Add to basket"),
  part: async (page) => {
    await page.getByText("other part").click();
  },
  fixed: (page) => button(page, "Copy this summary"),
};

/** States that only a hand makes, with the fixture each starts from. */
export const startsFrom: Record<string, string> = {
  "choice-asked": "choice",
  "choice-open": "choice",
  "footer-danger": "choice",
  "footer-restart": "choice",
  "model-plate-below": "model-plate",
  "model-plate-side": "model-plate",
  "model-plate-doors": "model-plate",
  "part-variant-fits": "part-variant",
  "part-variant-other": "part-variant",
  "part-variant-lost": "part-variant",
  "part-variant-serial": "part-variant",
  "part-serial-empty": "part-serial",
  "part-serial-unlike": "part-serial",
  "part-serial-fits": "part-serial",
  "part-serial-lost": "part-serial",
  "flow-running": "flow",
  "flow-scales": "flow-volume",
};
