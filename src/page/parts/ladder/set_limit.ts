// Writes one limit into the job's text. Stands in until the job's own edits (job/document.ts) are merged.
import { computed } from "@preact/signals";
import { parseDocument } from "yaml";
import { jobText } from "../../state";

export type LimitValue = number | boolean | string[] | null;

/** null takes the line out, so that the program's own value counts. */
export function setLimit(name: string, value: LimitValue): void {
  const document = parseDocument(jobText.peek());
  if (document.errors.length > 0) return;
  if (value === null) document.deleteIn(["limits", name]);
  else document.setIn(["limits", name], value);
  jobText.value = String(document);
}

/** The limits that the job itself names; read once for all fields. */
export const limitsOfJob = computed<Record<string, unknown>>(() => {
  try {
    const value = parseDocument(jobText.value).toJS() as { limits?: Record<string, unknown> } | null;
    return value?.limits ?? {};
  } catch {
    return {};
  }
});
