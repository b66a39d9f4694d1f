// The layers drawn as a cross-section, the uppermost first. Moved by a grip with pointer or finger, or by buttons.
import { useEffect, useRef, useState } from "preact/hooks";
import { job } from "../job/edit";
import { shownName } from "../names";
import { chosenLayer } from "../steps";
import { words } from "../words/words";

type Move = (from: number, to: number) => void;

/** The layer over which the pointer is: the nearest one above or below counts too. */
function bandAt(list: HTMLElement, y: number): number {
  const bands = Array.from(list.querySelectorAll<HTMLElement>(".band"));
  const below = bands.findIndex((band) => y < band.getBoundingClientRect().bottom);
  return below < 0 ? bands.length - 1 : below;
}

interface Dragging { from: number; to: number }

interface BandProps { index: number; step: (index: number, by: 1 | -1) => void; dragging: Dragging | null; drag: (event: PointerEvent, index: number) => void }

function Band({ index, step, dragging, drag }: BandProps) {
  const { painting } = words.value;
  const { layers } = job.value;
  const layer = layers[index];
  if (!layer) return null;
  const name = layer.name || painting.unnamed;
  const role = layer.role === "remove" ? painting.role_remove : layer.role === "keep" ? painting.role_keep : layer.role;
  const written = layer.found || layer.recorded;
  const material = written === "unknown" ? painting.not_known : shownName(written, "material");
  const classes = ["band", layer.role === "remove" ? "to-go" : "to-stay", dragging?.from === index ? "dragged" : "", dragging && dragging.from !== index && dragging.to === index ? "target" : ""];
  return (
    <li class={classes.join(" ")}>
      <span class="grip" title={painting.grip} aria-hidden="true" onPointerDown={(event) => drag(event, index)}>⠿</span>
      <button type="button" class="band-name" aria-pressed={index === chosenLayer.value} onClick={() => (chosenLayer.value = index)}>
        <strong>{painting.band(name, role)}</strong> <span class="soft">{material}</span>
      </button>
      <button type="button" aria-label={painting.up(name)} disabled={index === 0} onClick={() => step(index, -1)}>↑</button>
      <button type="button" aria-label={painting.down(name)} disabled={index === layers.length - 1} onClick={() => step(index, 1)}>↓</button>
    </li>
  );
}

export function CrossSection({ move }: { move: Move }) {
  const { painting } = words.value;
  const list = useRef<HTMLOListElement>(null);
  const [dragging, setDragging] = useState<Dragging | null>(null);
  // The layer that was moved keeps the keyboard's attention: its own button, which stands in another band now.
  const focusAfter = useRef<{ index: number; by: 1 | -1 } | null>(null);
  useEffect(() => {
    const moved = focusAfter.current;
    focusAfter.current = null;
    const [name, up, down] = moved ? list.current?.querySelectorAll(".band")[moved.index]?.querySelectorAll("button") ?? [] : [];
    const same = moved?.by === 1 ? down : up;
    (same?.disabled ? name : same)?.focus();
  });
  const step = (index: number, by: 1 | -1) => {
    focusAfter.current = { index: index + by, by };
    move(index, index + by);
  };
  const drag = (event: PointerEvent, from: number) => {
    const grip = event.currentTarget as HTMLElement;
    event.preventDefault();
    grip.setPointerCapture(event.pointerId);
    let to = from;
    const over = (moved: PointerEvent) => { if (list.current) setDragging({ from, to: (to = bandAt(list.current, moved.clientY)) }); };
    const end = (ended: Event) => {
      grip.removeEventListener("pointermove", over);
      grip.removeEventListener("pointerup", end);
      grip.removeEventListener("pointercancel", end);
      setDragging(null);
      if (ended.type === "pointerup") move(from, to);
    };
    grip.addEventListener("pointermove", over);
    grip.addEventListener("pointerup", end);
    grip.addEventListener("pointercancel", end);
  };
  return (
    <ol class="section" ref={list} aria-label={painting.layers}>
      {job.value.layers.map((_, index) => <Band key={index} index={index} step={step} dragging={dragging} drag={drag} />)}
      <li class="support">{painting.support}</li>
    </ol>
  );
}
