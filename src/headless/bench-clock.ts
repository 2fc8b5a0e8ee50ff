/** Timing for the bench, on machines that have other things to do as well: processor time, not that of the clock. */
import type { Seconds } from '../quantity/units.ts';

/** Of this process's own processor time: what else the machine does meanwhile is not in it. */
function secondsOf(work: () => void): Seconds {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
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
 * How many times longer the one takes than the other, in processor time. The two take turns, the quick one as often in a
 * turn as takes about as long, so that a slowed processor is slow for both alike; the median of the turns.
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
