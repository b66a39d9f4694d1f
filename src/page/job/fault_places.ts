// From the place of a fault in the file to the field that it is about.
import { isMap, isSeq } from "yaml";
import { keyOf, parsed, rangeOf, type Path } from "./yaml_text";

/** The offset in `text` of a line and column as the program counts them: from 1, columns in bytes. */
function offsetOf(text: string, line: number, column: number): number {
  const lines = text.split("\n");
  const before = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0);
  const bytes = new TextEncoder().encode(lines[line - 1] ?? "").slice(0, column - 1);
  return before + new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes).length;
}

function pathIn(node: unknown, at: number): (string | number)[] {
  if (isMap(node)) {
    const pair = [...node.items].reverse().find((one) => rangeOf(one.key)[0] <= at);
    return pair ? [keyOf(pair), ...(rangeOf(pair.value)[0] <= at ? pathIn(pair.value, at) : [])] : [];
  }
  if (isSeq(node)) {
    let index = -1;
    node.items.forEach((item, i) => { if (rangeOf(item)[0] <= at) index = i; });
    return index < 0 ? [] : [index, ...pathIn(node.items[index], at)];
  }
  return [];
}

/** The path of what stands at a place; empty where the fault has no place or the text cannot be read. */
export function pathAt(text: string, line: number, column: number): Path {
  const { body, document, isReadable } = parsed(text);
  return line < 1 || !isReadable ? [] : pathIn(document.contents, offsetOf(body, line, Math.max(column, 1)));
}
