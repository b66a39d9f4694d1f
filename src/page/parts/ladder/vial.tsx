// A vial, drawn: its parts as layers of their share, the active ones hatched; the label beside it names each.
import type { Mixture } from "./types";

const inside = { left: 9, top: 22, width: 34, height: 84 };
const hatches = ["none", "lines", "cross", "dots"] as const;

function Hatch({ kind, id }: { kind: (typeof hatches)[number]; id: string }) {
  if (kind === "none") return null;
  return (
    <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      {kind === "dots" ? <circle cx="3" cy="3" r="1.4" class="hatch-fill" /> : <path d={kind === "lines" ? "M0 0V7" : "M0 0V7M0 0H7"} class="hatch-line" />}
    </pattern>
  );
}

/** `order`: the bottles of the whole ladder, so that one liquid has one hatch in every vial. */
export function Vial({ mixture, order, id, title }: { mixture: Mixture; order: string[]; id: string; title: string }) {
  let filled = 0;
  const parts = [...mixture.parts].sort((a, b) => order.indexOf(a.liquid) - order.indexOf(b.liquid));
  return (
    <svg class="vial" viewBox="0 0 52 112" role="img" aria-label={title}>
      {parts.map((part) => {
        const height = (inside.height * part.volume_percent) / 100;
        filled += height;
        const place = Math.max(0, order.indexOf(part.liquid));
        const hatch = `${id}-${place}`;
        const y = inside.top + inside.height - filled;
        return (
          <g key={part.liquid}>
            <defs><Hatch kind={hatches[place % hatches.length] ?? "none"} id={hatch} /></defs>
            <rect x={inside.left} y={y} width={inside.width} height={height} class="liquid" />
            {place % hatches.length > 0 && <rect x={inside.left} y={y} width={inside.width} height={height} fill={`url(#${hatch})`} />}
            <path d={`M${inside.left} ${y}H${inside.left + inside.width}`} class="glass" />
          </g>
        );
      })}
      <path d="M16 3H36V12Q43 14 43 22V106H9V22Q9 14 16 12Z" class="glass" />
      <path d="M13 3H39" class="glass" />
    </svg>
  );
}

/** The key to the hatch of one liquid. */
export function Swatch({ place, id }: { place: number; id: string }) {
  const kind = hatches[place % hatches.length] ?? "none";
  return (
    <svg class="swatch" viewBox="0 0 20 14" aria-hidden="true">
      <defs><Hatch kind={kind} id={id} /></defs>
      <rect x="1" y="1" width="18" height="12" class="liquid" />
      {kind !== "none" && <rect x="1" y="1" width="18" height="12" fill={`url(#${id})`} />}
      <rect x="1" y="1" width="18" height="12" class="glass" />
    </svg>
  );
}
