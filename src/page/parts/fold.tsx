// What is read on demand is made on demand, so that a new ladder costs no more than what is seen of it.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";

interface Props {
  title: string;
  /** Where several have one title: tells them apart when they are read out. */
  name?: string | undefined;
  of?: string | undefined;
  startsOpen?: boolean;
  children: () => ComponentChildren;
}

export function Fold({ title, name, of, startsOpen = false, children }: Props) {
  const isOpen = useSignal(startsOpen);
  return (
    <details class={of} open={isOpen.value} onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary aria-label={name}>{title}</summary>
      {isOpen.value && children()}
    </details>
  );
}
