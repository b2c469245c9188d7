import { expect } from "@playwright/test";
import type { Turn } from "../../src/turn/index.ts";
import type { PanelPage } from "./panel-page.ts";

/** Ticks every line of a gate; each must have come unticked. @param how see `confirmGate` */
export async function tickAll({ host }: PanelPage, gate: Turn["gate"], how: "by tapping" | "at once") {
  const items = gate?.items ?? [];
  expect(items.length, "a gate has lines to tick").toBeGreaterThan(0);
  const boxes = host.getByRole("checkbox", { checked: false });
  await expect(boxes).toHaveCount(gate?.short ? 0 : items.length);
  if (how === "at once")
    await boxes.evaluateAll(async (all) => {
      for (const box of all) {
        (box as HTMLElement).click();
        await new Promise(requestAnimationFrame);
      }
    });
  else
    for (const { text } of gate?.short ? [] : items)
      await host.getByRole("checkbox", { name: text, exact: true }).tap();
}
