/** Values computed from the document, kept while the document stays the same object; never stored in it. */
import { instrumentOf } from '../circuit/instrument.ts';
import type { Design } from '../design/design.ts';

/** Remembers the last answer: the same argument gives the identical result. */
export function memoized<A, R>(compute: (argument: A) => R): (argument: A) => R {
  let last: { argument: A; result: R } | null = null;
  return (argument) => {
    if (!last || !Object.is(last.argument, argument)) last = { argument, result: compute(argument) };
    return last.result;
  };
}

/** The instrument a design describes. */
export const derivedInstrument = memoized((design: Design) => instrumentOf(design));
