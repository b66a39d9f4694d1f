// What the catalogue holds of liquids: asked once.
import { signal } from "@preact/signals";
import type { SolventsRow } from "../answers";
import { ask } from "../engine/engine";

export type SolventRow = SolventsRow;

export const solvents = signal<readonly SolventRow[]>([]);

export async function loadSolvents(): Promise<void> {
  const answer = await ask("solvents", { command: "list", words: ["solvents"], options: { format: "json" } });
  if (answer.exit === 0) solvents.value = (JSON.parse(answer.text) as { solvents: SolventRow[] }).solvents;
}
