// Figures as the reader's language writes them, and figures as people type them.
import { language } from "../words/words";

export function figure(value: number | null | undefined, digits = 2): string {
  if (value === null || value === undefined) return "";
  return new Intl.NumberFormat(language.value, { maximumFractionDigits: digits, useGrouping: false }).format(value);
}

export function percent(chance: number): string {
  const digits = chance < 0.195 ? 1 : 0;
  const format = new Intl.NumberFormat(language.value, { minimumFractionDigits: digits, maximumFractionDigits: digits });
  return chance > 0.99 && chance < 1 ? `>${format.format(99)}\u00a0%` : `${format.format(100 * chance)}\u00a0%`;
}

/** A number with a comma or a point; null where it is none. */
export function numberOf(text: string): number | null {
  const plain = text.trim().replace(",", ".");
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/** A decimal comma as the point that the program's files have; what is no number stays, so that the engine can say so. */
export function withPoint(text: string): string {
  const value = numberOf(text);
  return value === null ? text.trim() : text.trim().replace(",", ".");
}
