import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

type Props = {
  number: number;
  /** The step that is open. */
  at: number;
  title: string;
  /** What a finished step came to. */
  done?: string;
  /** Whether the title takes the focus when the step opens; not for the first one, where the turn's heading has it. */
  focus?: boolean;
  children: ComponentChildren;
};

/** One of a few steps on one screen; only the open one shows what is in it. */
export function Step({ number, at, title, done, focus, children }: Props) {
  const open = number === at;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (open && focus) heading.current?.focus();
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
