// Writes one limit into the job's text. Stands in until the job's own edits (job/document.ts) are merged.
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

/** What the job itself says of a limit; undefined where it leaves it to the program. */
export function limitOf(text: string, name: string): unknown {
  try {
    const value = parseDocument(text).toJS() as { limits?: Record<string, unknown> } | null;
    return value?.limits?.[name];
  } catch {
    return undefined;
  }
}
