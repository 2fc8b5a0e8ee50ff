/**
 * What the camera's readings themselves give away: the frame rate, a ripple of the light (as the frames alias
 * it), and a slow drift of both patches together, which is the camera's exposure moving rather than the light.
 */
import { type Fraction, type Hertz, type Seconds, VOICES } from '../quantity/units.ts';
import type { LuminanceSample } from './camera.ts';

/** Looked back upon. */
const WINDOW: Seconds = 3;
/** Frames needed before anything is said. */
const LEAST_FRAMES = 20;
/** A drift: both patches by more than this … */
const DRIFT: Fraction = 0.15;
/** … alike within this … */
const ALIKE: Fraction = 0.05;
/** … and never faster than this from frame to frame: shadows are. */
const SLOW: Fraction = 0.03;

export interface CameraFindings {
  /** Frames a second; null until known. */
  readonly frameRate: Hertz | null;
  /** Depth of the ripple between neighbouring frames, (max − min)/(max + min) about the trend, the larger patch. */
  readonly ripple: Fraction;
  readonly drifting: boolean;
}

export class CameraWatch {
  readonly #samples: LuminanceSample[] = [];

  take(sample: LuminanceSample): void {
    this.#samples.push(sample);
    while (this.#samples[0] && this.#samples[0].seconds < sample.seconds - WINDOW) this.#samples.shift();
  }

  /** Forgets, after the exposure was taken anew. */
  clear(): void {
    this.#samples.length = 0;
  }

  get findings(): CameraFindings {
    const samples = this.#samples;
    const first = samples[0];
    const last = samples.at(-1);
    if (!first || !last || samples.length < LEAST_FRAMES)
      return { frameRate: null, ripple: 0, drifting: false };
    const length = last.seconds - first.seconds;
    return {
      frameRate: length > 0 ? (samples.length - 1) / length : null,
      ripple: Math.max(...VOICES.map((voice) => rippleIn(samples.map(({ luminance }) => luminance[voice])))),
      drifting: isDrifting(samples),
    };
  }
}

/** Median of |y − mean of its neighbours| as a depth: blind to slopes and to single steps, such as a shadow. */
function rippleIn(values: readonly number[]): Fraction {
  const bends: number[] = [];
  for (let i = 1; i + 1 < values.length; i++) {
    const around = (values[i - 1]! + values[i + 1]!) / 2;
    if (around > 0) bends.push(Math.abs(values[i]! - around) / around);
  }
  bends.sort((a, b) => a - b);
  return bends[bends.length >> 1] ?? 0;
}

function isDrifting(samples: readonly LuminanceSample[]): boolean {
  const factor = VOICES.map((v) => samples.at(-1)!.luminance[v] / samples[0]!.luminance[v]);
  const [a, b] = factor as [number, number];
  if (!(Math.abs(Math.log(a)) > DRIFT && Math.abs(Math.log(a / b)) < ALIKE)) return false;
  return samples.every((sample, i) => {
    const before = samples[i - 1];
    return !before || VOICES.every((v) => Math.abs(sample.luminance[v] / before.luminance[v] - 1) < SLOW);
  });
}
