import type { ComponentType } from "preact";
import type { MoreProps } from "../../frame/index.ts";
import { FullScreen } from "../full-screen/index.ts";
import { AskPerson } from "../live/index.ts";
import { Carry } from "./carry.tsx";
import { SumUp } from "./sum-up.tsx";

/**
 * What the menu has besides the ways out, once the later screens are there.
 * @param UnderBar what stands below the bar while the shop's people help
 * @param Machine the record of the machine, and what forgets everything
 */
export const createMore =
  (UnderBar: ComponentType<MoreProps>, Machine: ComponentType<MoreProps>) => (props: MoreProps) => (
    <>
      {props.isListed && props.services.live?.isOffered() && (
        <div class="ask person">
          <AskPerson {...props} why="menu" class="quiet" leave={props.leave} />
        </div>
      )}
      <FullScreen {...props} />
      <SumUp {...props} />
      <Carry {...props} />
      <Machine {...props} />
      <UnderBar {...props} />
    </>
  );
