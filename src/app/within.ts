/** Waiting, but not for ever. */
import type { Seconds } from '../quantity/units.ts';

/** The answer, or null where none has come after so many seconds. */
export function within<T>(answer: Promise<T>, seconds: Seconds): Promise<T | null> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => resolve(null), seconds * 1000);
    answer.then(resolve, reject).finally(() => clearTimeout(late));
  });
}
