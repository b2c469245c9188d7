import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

type Props = {
  number: number;
  /** The step that is open. */
  at: number;
  title: string;
  /** What a finished step came to. */
  done?: string;
  /** Whether something in the step takes the focus itself. */
  leavesFocus?: boolean;
  children: ComponentChildren;
};

/** One of a few steps on one screen; only the open one shows what is in it, and its title takes the focus. */
export function Step({ number, at, title, done, leavesFocus, children }: Props) {
  const open = number === at;
  // The step that is open from the start leaves the focus where it is.
  const wasOpen = useRef(open);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (open && !wasOpen.current && !leavesFocus) heading.current?.focus();
    wasOpen.current = open;
  }, [open]);
  return (
    <li class={open ? "open" : ""} aria-current={open ? "step" : undefined}>
      <h3 ref={heading} tabIndex={-1}>
        {title} {done && <span>{done}</span>}
      </h3>
      {open && children}
    </li>
  );
}
