// Faults as the program tells them: where, what is wrong, what would be right.
import type { Fault } from "../engine/engine";
import { jobFile, logFile } from "../state";
import { words } from "../words/words";

export function FaultLine({ fault }: { fault: Fault }) {
  const { files } = words.value;
  const name = fault.file === jobFile ? files.file_names.job : fault.file === logFile ? files.file_names.log : fault.file;
  return (
    <p>
      {fault.line > 0 && <strong>{name}, {files.line(fault.line, fault.column)}: </strong>}
      {fault.message}{fault.remedy && `; ${fault.remedy}`}
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
