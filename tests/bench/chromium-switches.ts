/** How Chromium is started for measuring and for pictures: nothing of its own on the line, no sandbox in a container. */
export const chromiumSwitches = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
