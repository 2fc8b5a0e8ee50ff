/** Timing for the bench, on machines that have other things to do as well. */
import type { Seconds } from '../quantity/units.ts';

function secondsOf(work: () => void): Seconds {
  const start = performance.now();
  work();
  return (performance.now() - start) / 1000;
}

/** Seconds of the fastest of a few runs, after one to get warm. */
export function fastest(work: () => void, runs = 3): Seconds {
  work();
  let best = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run++) best = Math.min(best, secondsOf(work));
  return best;
}

/** Of the values in order, the one at a share of the way from the least to the largest. */
export function quantileOf(values: Iterable<number>, share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  if (sorted.length === 0) throw new Error('Nothing was measured');
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}

export const medianOf = (values: Iterable<number>): number => quantileOf(values, 0.5);

/**
 * How many times longer the one takes than the other. The two take turns, the quick one as often in a turn as takes
 * about as long, so that whatever else the machine does falls on both alike; the median of the turns.
 */
export function timesLonger(slow: () => void, quick: () => void, turns = 9): number {
  slow();
  quick();
  const often = Math.max(1, Math.round(secondsOf(slow) / fastest(quick)));
  const ratios: number[] = [];
  for (let turn = 0; turn < turns; turn++) {
    const slowSeconds = secondsOf(slow);
    const quickSeconds = secondsOf(() => {
      for (let time = 0; time < often; time++) quick();
    });
    ratios.push((slowSeconds * often) / quickSeconds);
  }
  return medianOf(ratios);
}
