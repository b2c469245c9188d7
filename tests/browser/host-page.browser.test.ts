import { expect, test } from "./panel-test.ts";

test.describe("a host page", () => {
  for (const width of [320, 360, 1280]) {
    test(`in a centred column of a page ${width} px wide the panel takes the room that there is`, async ({
      panel,
      page,
    }) => {
      await page.setViewportSize({ width, height: 740 });
      await panel.open("flex.html");
      const box = await panel.host.boundingBox();
      expect(box?.width).toBeGreaterThanOrEqual(Math.min(width, 640));
      expect(box?.width).toBeLessThanOrEqual(width);
    });
  }
});
