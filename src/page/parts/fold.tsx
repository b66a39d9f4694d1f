// What is read on demand is made on demand, so that a new ladder costs no more than what is seen of it.
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";

export function Fold({ title, of, children }: { title: string; of?: string | undefined; children: () => ComponentChildren }) {
  const isOpen = useSignal(false);
  return (
    <details class={of} onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen.value && children()}
    </details>
  );
}
