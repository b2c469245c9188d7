import type { MoreProps } from "../../frame/index.ts";
import { FullScreen } from "../full-screen/index.ts";
import { Carry } from "./carry.tsx";
import { SumUp } from "./sum-up.tsx";

/** What the menu has besides the ways out, once the later screens are there. */
export const More = (props: MoreProps) => (
  <>
    <FullScreen {...props} />
    <SumUp {...props} />
    <Carry {...props} />
  </>
);
