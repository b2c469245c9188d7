import { h, render } from "preact";
import { Panel, type PanelProps } from "../panel/frame/index.ts";

/** Draws the panel into a shadow root; null takes it away again. */
export function paint(root: ShadowRoot, props: PanelProps | null): void {
  render(props && h(Panel, props), root);
}
