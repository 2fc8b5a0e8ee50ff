/** Long work given as a generator: run to its end at once, or in slices between which others have their turn. */

/** Work that may pause wherever it yields. */
export type Steps<R, Step = void> = Generator<Step, R>;

/** How slices are told from each other. */
export interface Turns {
  /** Milliseconds of work between two looks at what else there is to do. */
  readonly sliceMilliseconds: number;
  now(): number;
  /** Calls back when other events have had their turn. */
  later(go: () => void): void;
}

/** Who hears of the work. */
export interface Heard<R, Step = void> {
  /** After a slice that is not the last one. */
  paused?(step: Step): void;
  done(result: R): void;
  failed(error: unknown): void;
}

/** Runs work to its end. */
export function wholeOf<R>(steps: Steps<R, unknown>): R {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

/** Begins work in slices, the first one later. Gives what stops it: from then on nothing is heard. */
export function inSlices<R, Step>(steps: Steps<R, Step>, turns: Turns, heard: Heard<R, Step>): () => void {
  let isStopped = false;
  const slice = (): void => {
    if (isStopped) return;
    let step: IteratorResult<Step, R>;
    try {
      const until = turns.now() + turns.sliceMilliseconds;
      do step = steps.next();
      while (!step.done && turns.now() < until);
    } catch (error) {
      heard.failed(error);
      return;
    }
    if (step.done) {
      heard.done(step.value);
      return;
    }
    heard.paused?.(step.value);
    turns.later(slice);
  };
  turns.later(slice);
  return () => {
    isStopped = true;
  };
}
