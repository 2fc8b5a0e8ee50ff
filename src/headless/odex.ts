/**
 * What this project uses of `odex`. The package brings TypeScript that does not read under this project's settings,
 * so it is asked for at run time and described here.
 */
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);

export interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  initialStepSize: number;
  maxStepSize: number;
  denseOutput: boolean;
  /** Told of every accepted step from x0 to x, the first time with x0 = x; `false` ends the integration. */
  solve(
    slope: (x: number, y: number[]) => number[],
    from: number,
    start: number[],
    to: number,
    onStep?: (
      step: number,
      x0: number,
      x: number,
      y: number[],
      within: (component: number, x: number) => number,
    ) => boolean | undefined,
  ): { readonly y: number[]; readonly outcome: number };
}

/** A solver for so many equations at once. */
export const { Solver } = require('odex') as { readonly Solver: new (equations: number) => Solver };
