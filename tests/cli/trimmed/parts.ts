/* What the trimmed script is compared by. */
export { Fragment, h, render } from "preact";
export { useEffect, useId, useLayoutEffect, useRef, useState } from "preact/hooks";
export * as z from "zod/mini";
export { parseCatalogue } from "../../../src/catalogue/index.ts";
export { fetchShopFlows } from "../../../src/embed/shop-flows.ts";
export { createCharts, createListAdviser } from "../../../src/flow/index.ts";
export {
  createTexts,
  parseEvent,
  parseLog,
  record,
  startSession,
  viewOf,
} from "../../../src/session/index.ts";
export { Panel } from "../../../src/ui/chat/index.ts";
export { screens } from "../../../src/ui/measure/index.ts";
