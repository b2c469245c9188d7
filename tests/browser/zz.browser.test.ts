import { test } from "./panel-test.ts";
const say = async (panel: any, words: string) => {
  const field = panel.host.locator(".composer input");
  await field.fill(words);
  await field.press("Enter");
  await panel.host.locator(".heard").waitFor({ timeout: 6000 });
};
for (const scheme of ["light", "dark"] as const)
  test(`composer ${scheme}`, async ({ panel, page }) => {
    test.setTimeout(120_000);
    await page.emulateMedia({ colorScheme: scheme });
    await page.setViewportSize({ width: 360, height: 740 });
    page.on("console", (m) => console.log("CON", m.text()));
    page.on("pageerror", (m) => console.log("ERR", m.stack));
    page.on("requestfailed", (m) => console.log("RF", m.url()));
    page.on("response", (m) => /words/.test(m.url()) && console.log("RS", m.status(), m.url()));
    await panel.openWhere("opening.symptom", { "opening.danger": "none" });
    await page.screenshot({ path: `/tmp/w/cm-${scheme}-0.png` });
    let n = 1;
    for (const words of ["where is the water filter", "there are sparks at the plug", "no ice since we got a new filter and it hums", "my dog barks"]) {
      await say(panel, words);
      await page.waitForTimeout(300);
      await page.screenshot({ path: `/tmp/w/cm-${scheme}-${n++}.png` });
      const ok = panel.host.locator(".heard button").last();
      await ok.click();
      await page.waitForTimeout(200);
    }
  });
