/**
 * The rules a document's entries are read by. Each carries what it accepts as the message of its issue, so that a
 * complaint can say it.
 */
import * as v from 'valibot';
import type { Limits } from '../quantity/parse.ts';
import { excerpt } from '../words/excerpt.ts';

export type Accepts =
  | { readonly kind: 'number'; readonly limits: Limits }
  | { readonly kind: 'whole number' }
  | { readonly kind: 'whole number within'; readonly limits: Limits }
  | { readonly kind: 'text'; readonly length: number }
  | { readonly kind: 'date' }
  | { readonly kind: 'list'; readonly most: number }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  | { readonly kind: 'yes or no' }
  | { readonly kind: 'entries' }
  | { readonly kind: 'no such entry' };

/** What a rule accepts, as the text of its issue. */
export const says = (accepts: Accepts): string => JSON.stringify(accepts);

export const within = (limits: Limits, numbers: 'any' | 'whole' = 'any') => {
  const message = says({ kind: numbers === 'whole' ? 'whole number within' : 'number', limits });
  return v.pipe(
    v.number(message),
    v.check((x) => x >= limits.min && x <= limits.max && (numbers === 'any' || Number.isInteger(x)), message),
  );
};
export const oneOf = <const T extends string>(options: readonly T[]) =>
  v.picklist(options, says({ kind: 'choice', options }));
export const keysOf = <T extends string>(record: Readonly<Record<T, unknown>>) =>
  oneOf(Object.keys(record) as T[]);
export const text = (length: number) => {
  const message = says({ kind: 'text', length });
  return v.pipe(v.string(message), v.maxLength(length, message));
};
export const yesNo = v.boolean(says({ kind: 'yes or no' }));
export const wholeMessage = says({ kind: 'whole number' });
export const wholeNumber = v.pipe(
  v.number(wholeMessage),
  v.check((x) => Number.isSafeInteger(x) && x >= 0, wholeMessage),
);
export const entries = <const T extends v.ObjectEntries>(shape: T) =>
  v.strictObject(shape, says({ kind: 'entries' }));
/** A list of at most so many of one kind. */
export const listOf = <const T extends v.GenericSchema>(schema: T, most: number) => {
  const message = says({ kind: 'list', most });
  return v.pipe(v.array(schema, message), v.maxLength(most, message), v.readonly());
};
export const pair = <const T extends v.GenericSchema>(schema: T) => entries({ A: schema, B: schema });
const dateMessage = says({ kind: 'date' });
/** A day of the calendar from 1900 to 2099, `2026-06-21`. */
export const calendarDate = v.pipe(v.string(dateMessage), v.check(isDate, dateMessage));

function isDate(written: string): boolean {
  if (!/^(?:19|20)\d\d-\d\d-\d\d$/.test(written)) return false;
  const day = new Date(`${written}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(written);
}

/** What was read in the place of an entry, short enough to show. However deep it goes, only its own entries are written. */
export function excerptOf(input: unknown): string {
  if (input === undefined) return 'nothing';
  let isWhole = true;
  const written = JSON.stringify(input, (_key, value: unknown) => {
    const isInside = !isWhole;
    isWhole = false;
    return isInside && typeof value === 'object' && value !== null ? '…' : value;
  });
  return excerpt(written ?? String(input));
}
