import { expect, test } from "./panel-test.ts";

/** Stands in for the reader's worker, by the messages that it is sent: it reads these lines in every picture. */
const workerThatReads = (...lines: string[]) => `
onmessage = ({ data: { jobId, action } }) => {
  const read = ${JSON.stringify(lines)}.map((text) => ({ text, confidence: 90 }));
  postMessage({ jobId, action, status: "resolve", data: action === "recognize" ? { blocks: [{ paragraphs: [{ lines: read }] }] } : {} });
};`;

/** A picture of 2 by 2 pixels. */
const photo = {
  name: "plate.png",
  mimeType: "image/png",
  buffer: Buffer.from(
    "iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAFklEQVR4nGP8z8DAwMDAxMDAwMDAAAANHQEDasKb6QAAAABJRU5ErkJggg==",
    "base64",
  ),
};

/** Runs in the page: lines of print on a plate, as the address of a picture. */
function drawPlate(lines: string[]): string {
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [1200, 800];
  const brush = canvas.getContext("2d") as CanvasRenderingContext2D;
  brush.fillStyle = "#f2f2ee";
  brush.fillRect(0, 0, 1200, 800);
  brush.fillStyle = "#222";
  brush.rotate(0.06);
  for (const [at, line] of lines.entries()) {
    brush.font = "56px sans-serif";
    brush.fillText(line, 160, 220 + 140 * at);
  }
  return canvas.toDataURL();
}

test.describe("a photo of the plate", () => {
  test("is read by what the shop serves beside us, offered for a tap, and leaves nothing behind", async ({
    panel,
    page,
    site,
  }) => {
    const asked: string[] = [];
    page.on("request", (request) => void asked.push(request.url()));
    await page.route("**/plate/*/worker.js", (route) =>
      route.fulfill({ contentType: "text/javascript", body: workerThatReads("MODEL UM87-TXM5.2") }),
    );
    await panel.openWhere("part.model", {}, "photo.html", "seal-worn");
    const take = panel.button(panel.text("photo.take"));
    await expect(take).toBeVisible();
    await expect(panel.host.getByText(panel.text("photo.about", { size: 6 }))).toBeVisible();
    expect(asked.filter((address) => address.includes("/plate/"))).toEqual([]);
    const kept = await panel.storedText();

    await panel.host.locator("input[type=file]").setInputFiles(photo);
    const mine = panel.button(`${panel.text("measure.mine")}: UM87-TXM5.2`);
    await expect(mine).toBeVisible();
    await expect(panel.host.getByText(panel.text("photo.found_one"))).toBeVisible();
    await panel.seesTurn();
    expect(await panel.storedText()).toBe(kept);

    await mine.tap();
    await expect(panel.host.locator("canvas")).toHaveCount(0);
    const [code, typed] = ["UM87-TXM5.2", "UM87-TXM5.2"];
    await expect
      .poll(async () => (await panel.storedEvents()).at(-1))
      .toMatchObject({ type: "model-given", code, typed });
    expect(asked.filter((address) => !address.startsWith(site) && !address.startsWith("blob:"))).toEqual([]);
  });

  test.describe("whose reader does not come", () => {
    test.use({ expectedFaults: /plate|worker/i });

    test("is not read: it says so, and the code can be typed", async ({ panel, page }) => {
      await page.route("**/plate/*/worker.js", (route) => route.fulfill({ status: 404, body: "" }));
      await panel.openWhere("part.model", {}, "photo.html", "seal-worn");
      await panel.host.locator("input[type=file]").setInputFiles(photo);
      await expect(panel.host.getByText(panel.text("photo.broken"))).toBeVisible();
      await expect(panel.button(panel.text("photo.take"))).toHaveCount(0);
      await panel.giveModel("UM87-TXM5.2");
    });
  });

  test("is truly read, by the files of the build and under a strict policy", async ({ panel, page }) => {
    // It takes a phone's processor several seconds, so it is left to the long sweeps.
    test.skip(process.env["SOAK"] !== "all");
    const drawn = await page.evaluate(drawPlate, ["Ullamere", "MODEL  UM87-TXM5.2", "SERIAL 5104 236181"]);
    await panel.openWhere("part.model", {}, "photo.html", "seal-worn");
    await panel.host
      .locator("input[type=file]")
      .setInputFiles({ ...photo, buffer: Buffer.from(drawn.slice(drawn.indexOf(",") + 1), "base64") });
    await expect(panel.button(`${panel.text("measure.mine")}: UM87-TXM5.2`)).toBeVisible({ timeout: 60_000 });
  });

  test("is not offered where the shop serves no reader", async ({ panel, page }) => {
    const asked: string[] = [];
    page.on("request", (request) => void asked.push(request.url()));
    await panel.openWhere("part.model", {}, undefined, "seal-worn");
    await panel.findModel("UM87-TXM5.1");
    await expect(panel.host.locator("input[type=file]")).toHaveCount(0);
    expect(asked.filter((address) => /\/plate\/|photo-/.test(address))).toEqual([]);
  });
});
