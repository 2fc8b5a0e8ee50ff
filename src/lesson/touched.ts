/** What was touched on a bench: whether only what controls write, whether anything at all. */
import type { Design } from '../design/design.ts';
import type { Bench } from './bench.ts';
import { CONTROLS, type ControlId } from './controls.ts';

/** Whether a change of the design touches nothing but what these controls write: the filter at the one door. */
export function keepsTo(controls: readonly ControlId[], before: Design, after: Design): boolean {
  const writes = controls.flatMap((id) => CONTROLS[id].writes);
  return differences(before, after, '').every((path) => writes.includes(path));
}

/** Whether nothing on the bench has been moved. */
export function isUntouched(start: Bench, now: Bench): boolean {
  return differences(start, now, '').length === 0;
}

function differences(before: unknown, after: unknown, path: string): readonly string[] {
  if (Object.is(before, after)) return [];
  if (!isGroup(before) || !isGroup(after)) return [path];
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...keys].flatMap((key) => differences(before[key], after[key], path ? `${path}.${key}` : key));
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
