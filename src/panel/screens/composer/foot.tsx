import type { ComponentType } from "preact";
import type { ComposerProps } from "../../frame/index.ts";
import { Composer } from "./composer.tsx";

/** The field at the panel's end. @param AboveField what the shop's people suggest, while they help */
export const createFoot = (AboveField: ComponentType<ComposerProps>) => (props: ComposerProps) => (
  <>
    <AboveField {...props} />
    <Composer {...props} />
  </>
);
