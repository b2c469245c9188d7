import type { MoreProps } from "../../frame/index.ts";
import { FullScreen } from "../full-screen/index.ts";
import { Carry } from "./carry.tsx";

/** What the menu has besides the ways out, once the later screens are there. */
export const More = (props: MoreProps) => (
  <>
    <FullScreen {...props} />
    <Carry {...props} />
  </>
);
