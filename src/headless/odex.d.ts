/** What this project uses of `odex`, which brings no declarations that read under these settings. */
declare module 'odex' {
  export class Solver {
    /** For so many equations at once. */
    constructor(equations: number);
    absoluteTolerance: number;
    relativeTolerance: number;
    initialStepSize: number;
    maxStepSize: number;
    maxSteps: number;
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
}
