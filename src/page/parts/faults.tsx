// Faults as the program tells them: where, what is wrong, what would be right.
import type { Fault } from "../engine/engine";

function FaultLine({ fault }: { fault: Fault }) {
  const place = fault.line > 0 ? `${fault.file}, ${fault.line}:${fault.column} ` : "";
  return (
    <p>
      {place && <span class="soft">{place}</span>}
      <strong>{fault.message}</strong>
      {fault.remedy && <> – {fault.remedy}</>}
    </p>
  );
}

/** `notes` is what the program wrote beside the answer; shown where it names no fault by itself. */
export function Faults({ faults, notes = "", id }: { faults: Fault[]; notes?: string; id?: string }) {
  if (faults.length === 0 && !notes.trim()) return null;
  return (
    <div class="faults" id={id}>
      {faults.map((fault, index) => <FaultLine key={index} fault={fault} />)}
      {faults.length === 0 && <pre class="said">{notes.trim()}</pre>}
    </div>
  );
}
