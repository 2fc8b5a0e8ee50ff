/** Choices of a radio row from a record of value → word. */
import type { Choice } from './choice-row.ts';

export function choicesOf(names: Readonly<Record<string, string>>): readonly Choice[] {
  return Object.entries(names).map(([value, label]) => ({ value, label }));
}
