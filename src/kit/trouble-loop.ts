/**
 * A stretch of a solved voltage that can be played over and over: as long as nearly whole cycles of all its pitches,
 * its end faded into its beginning.
 */
import type { Hertz, Seconds } from '../quantity/units.ts';

export interface Loop {
  readonly volts: Float32Array<ArrayBuffer>;
  readonly rate: Hertz;
}

const SHORTEST: Seconds = 0.25;
const FADE: Seconds = 0.02;

/** Null when there is too little of it. */
export function loopOf(
  samples: Float32Array<ArrayBuffer>,
  rate: Hertz,
  pitches: readonly Hertz[],
): Loop | null {
  const fade = Math.round(FADE * rate);
  const most = samples.length - fade;
  const least = Math.min(most, Math.round(SHORTEST * rate));
  if (least <= fade) return null;
  let [length, fewest] = [most, Number.POSITIVE_INFINITY];
  for (let n = least; n <= most; n++) {
    // How far each pitch is from whole cycles, in seconds.
    const off = pitches.reduce((sum, hertz) => {
      const cycles = (n / rate) * hertz;
      return sum + Math.abs(cycles - Math.round(cycles)) / hertz;
    }, 0);
    if (off < fewest) [length, fewest] = [n, off];
  }
  const volts = samples.slice(0, length);
  for (let i = 0; i < fade; i++) {
    const share = (i + 0.5) / fade;
    volts[i] = share * samples[i]! + (1 - share) * samples[length + i]!;
  }
  return { volts, rate };
}
