/** Questions to a stretch of sound, answered in seconds, hertz and volts. */

export interface Sound {
  readonly samples: Float32Array;
  readonly sampleRate: number;
}

/** Root mean square between two moments. */
export function levelAt({ samples, sampleRate }: Sound, from = 0, to = samples.length / sampleRate): number {
  const part = samples.subarray(Math.round(from * sampleRate), Math.round(to * sampleRate));
  let sum = 0;
  for (const value of part) sum += value * value;
  return Math.sqrt(sum / Math.max(1, part.length));
}

/** Largest absolute value. */
export function peakOf({ samples }: Sound): number {
  let peak = 0;
  for (const value of samples) peak = Math.max(peak, Math.abs(value));
  return peak;
}

export function isSilent(sound: Sound, from?: number, to?: number): boolean {
  return levelAt(sound, from, to) < 1e-6;
}

/** Time of the first sample above a level; null when there is none. */
export function firstSoundAt({ samples, sampleRate }: Sound, level: number): number | null {
  const index = samples.findIndex((value) => Math.abs(value) > level);
  return index < 0 ? null : index / sampleRate;
}

/** Moments at which the sound crosses a level, each with its direction, placed between samples. */
export function crossings({ samples, sampleRate }: Sound, level: number): { time: number; up: boolean }[] {
  const found: { time: number; up: boolean }[] = [];
  for (let i = 1; i < samples.length; i++) {
    const before = samples[i - 1]! - level;
    const after = samples[i]! - level;
    if (before < 0 !== after < 0)
      found.push({ time: (i - 1 + before / (before - after)) / sampleRate, up: after >= 0 });
  }
  return found;
}

/** Frequency of one voice: whole periods between upward crossings of the level. */
export function frequencyOf(sound: Sound, level: number): number {
  const ups = crossings(sound, level).filter((c) => c.up);
  if (ups.length < 2) return 0;
  return (ups.length - 1) / (ups.at(-1)!.time - ups[0]!.time);
}

/** Share of the time above the level, over whole periods. */
export function dutyOf(sound: Sound, level: number): number {
  const all = crossings(sound, level);
  const start = all.findIndex((c) => c.up);
  const end = all.findLastIndex((c) => c.up);
  let high = 0;
  for (let i = start; i < end; i += 2) high += all[i + 1]!.time - all[i]!.time;
  return high / (all[end]!.time - all[start]!.time);
}

/** Interval between two frequencies, cents. */
export function centsBetween(from: number, to: number): number {
  return 1200 * Math.log2(to / from);
}

/** A stretch of a sound as a sound of its own. */
export function partOf({ samples, sampleRate }: Sound, from: number, to: number): Sound {
  return {
    samples: samples.subarray(Math.round(from * sampleRate), Math.round(to * sampleRate)),
    sampleRate,
  };
}
