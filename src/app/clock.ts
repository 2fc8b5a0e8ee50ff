/** The page's own clock. */
import type { Seconds } from '../quantity/units.ts';

export function seconds(): Seconds {
  return performance.now() / 1000;
}
