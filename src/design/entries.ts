/** Entries of a document compared and changed; unchanged ones stay the same objects. */

/** The same object when every given entry already holds. */
export function withEntries<T extends object>(object: T, change: Partial<NoInfer<T>>): T {
  const keys = Object.keys(change) as (keyof T)[];
  return keys.every((key) => Object.is(object[key], change[key])) ? object : { ...object, ...change };
}

/** Whether two values of a document are equal, entry by entry. */
export function equalValues(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [one, other] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => Object.hasOwn(other, key) && equalValues(one[key], other[key]))
  );
}
