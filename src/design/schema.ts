/**
 * The rules a document's entries are read by. Each carries what it accepts as the message of its issue, so that a
 * complaint can say it.
 */
import * as v from 'valibot';
import type { Limits } from '../quantity/parse.ts';

export type Accepts =
  | { readonly kind: 'number'; readonly limits: Limits }
  | { readonly kind: 'whole number' }
  | { readonly kind: 'text'; readonly length: number }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  | { readonly kind: 'yes or no' }
  | { readonly kind: 'entries' }
  | { readonly kind: 'list'; readonly most: number }
  | { readonly kind: 'no such entry' };

/** What a rule accepts, as the text of its issue. */
export const says = (accepts: Accepts): string => JSON.stringify(accepts);

export const within = (limits: Limits) => {
  const message = says({ kind: 'number', limits });
  return v.pipe(
    v.number(message),
    v.check((x) => x >= limits.min && x <= limits.max, message),
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
export const pair = <const T extends v.GenericSchema>(schema: T) => entries({ A: schema, B: schema });
/** A list of up to so many of one kind. */
export const list = <const T extends v.GenericSchema>(item: T, most: number) => {
  const message = says({ kind: 'list', most });
  return v.pipe(v.array(item, message), v.maxLength(most, message));
};
