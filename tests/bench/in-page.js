// @ts-check
/*
 * Runs in the measured page before anything else. A heading counts as shown once the frame after it has been drawn:
 * a message posted from that frame's callback is handled when the browser is through with the frame.
 */
{
  /** @type {import("./visit.ts").InPage} */
  const marks = { headings: [], longTasks: [], shifts: [], firstTap: null, next: null };
  Object.assign(window, { fridgesideBench: marks });
  let tappedAt = 0;
  /** @type {Element | null} */
  let shown = null;

  /** @param {ParentNode} root */
  const look = (root) => {
    const heading = root.querySelector("h2");
    if (!heading?.textContent || heading === shown) return;
    shown = heading;
    const since = tappedAt;
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        const at = performance.now();
        marks.headings.push({ at, text: heading.textContent ?? "", sinceTap: since ? at - since : null });
        marks.next?.();
      };
      port2.postMessage(null);
    });
  };
  /** @param {Document | ShadowRoot} root */
  const watch = (root) =>
    new MutationObserver(() => look(root)).observe(root, { childList: true, subtree: true });

  watch(document);
  // A shadow tree hides its changes from the page: be there when it is made.
  const attach = Element.prototype.attachShadow;
  Element.prototype.attachShadow = function (settings) {
    const root = attach.call(this, settings);
    watch(root);
    return root;
  };
  addEventListener(
    "pointerup",
    ({ timeStamp }) => {
      tappedAt = timeStamp;
      marks.firstTap ??= timeStamp;
    },
    true,
  );

  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries())
      marks.longTasks.push({ at: startTime, ms: duration });
  }).observe({ type: "longtask", buffered: true });
  new PerformanceObserver((list) => {
    for (const entry of /** @type {any[]} */ (list.getEntries()))
      if (!entry.hadRecentInput) marks.shifts.push({ at: entry.startTime, by: entry.value });
  }).observe({ type: "layout-shift", buffered: true });
}
