/**
 * Aliases of a source: the largest line that is no harmonic, below 16 kHz, in decibels against the fundamental.
 * While a pitch glides there are no lines to tell apart; there the sound is held against the same sound made at four
 * times the rate, each divided by what its own edges leave of a frequency.
 */

import { ONLY_A, pulseOf, pulseSettings, steady } from '../../tests/sound/playing.ts';
import { windowedSpectrum } from '../../tests/sound/spectrum.ts';
import type { Fraction, Hertz } from '../quantity/units.ts';
import { REACH } from '../sound/bandlimit.ts';
import { Engine } from '../sound/engine.ts';
import { renderTake } from '../sound/render.ts';
import type { EngineSettings } from '../sound/settings.ts';

export const RATE: Hertz = 48_000;
/** A power of two; the window's main lobe is eight bins wide. */
const COUNT = 32_768;
const SKIPPED = 8000;
const LOBE = 8;
const HIGHEST: Hertz = 16_000;

const LIGHT = steady(300, 2);

/** Seconds of a steady sound that `aliasDb` needs. */
export const ALIAS_SECONDS = 1;

/** Of a steady pulse: lines within eight bins of a harmonic or of 0 Hz do not count. */
export function aliasDb(samples: ArrayLike<number>, hertz: Hertz): number {
  const lines = windowedSpectrum(Array.prototype.slice.call(samples, SKIPPED, SKIPPED + COUNT) as number[]);
  const spacing = (hertz * COUNT) / RATE;
  const at = Math.round(spacing);
  const fundamental = Math.max(...lines.subarray(at - 1, at + 2));
  let loudest = 0;
  for (let bin = LOBE + 1; bin < (HIGHEST * COUNT) / RATE; bin++)
    if (Math.abs(bin - Math.round(bin / spacing) * spacing) > LOBE) loudest = Math.max(loudest, lines[bin]!);
  return 20 * Math.log10(loudest / fundamental);
}

/** The engine's own pulse of one voice. */
export function enginePulse(hertz: Hertz, duty: Fraction): Float32Array {
  return renderTake(pulseSettings(hertz, duty), LIGHT, ALIAS_SECONDS, RATE).samples;
}

/** The engine while one voice's pitch glides from `from` to `to` and its duty stays. */
export function glideAliasDb(from: Hertz, to: Hertz, duty: Fraction): number {
  const slow = glide(from, to, duty, RATE, COUNT);
  const fast = glide(from, to, duty, 4 * RATE, 4 * COUNT);
  const slowEdge = edgeOf(RATE);
  const fastEdge = edgeOf(4 * RATE);
  let loudest = 0;
  let fundamental = 0;
  for (let bin = LOBE + 1; bin < (HIGHEST * COUNT) / RATE; bin++) {
    const hertz = (bin * RATE) / COUNT;
    const one = divided(slow, bin, slowEdge(hertz));
    const other = divided(fast, bin, fastEdge(hertz));
    loudest = Math.max(loudest, Math.hypot(one.re - other.re / 4, one.im - other.im / 4));
    fundamental = Math.max(fundamental, Math.hypot(one.re, one.im));
  }
  return 20 * Math.log10(loudest / fundamental);
}

interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}
interface Complex {
  readonly re: number;
  readonly im: number;
}

/** Blackman–Harris spectrum of a glide over 40 steps of 30 ms, from the same moment at any rate. */
function glide(from: Hertz, to: Hertz, duty: Fraction, rate: Hertz, count: number): Spectrum {
  const at = (share: number): EngineSettings => pulseSettings(from + (to - from) * share, duty);
  const engine = new Engine(rate, at(0), LIGHT);
  engine.render(new Float32Array(REACH));
  const steps = 40;
  const block = (rate * 30) / 1000;
  const samples = new Float32Array(block * steps);
  for (let step = 0; step < steps; step++) {
    engine.setSettings(at((step + 1) / steps));
    engine.render(samples.subarray(step * block, (step + 1) * block));
  }
  const skipped = (SKIPPED * rate) / RATE;
  const re = Float64Array.from({ length: count }, (_, i) => {
    const x = (2 * Math.PI * i) / count;
    const window = 0.35875 - 0.48829 * Math.cos(x) + 0.14128 * Math.cos(2 * x) - 0.01168 * Math.cos(3 * x);
    return samples[skipped + i]! * window;
  });
  return transformed(re, new Float64Array(count));
}

/** Fourier transform of a power of two of values: that of the even and that of the odd places, put together. */
function transformed(re: Float64Array, im: Float64Array): Spectrum {
  const half = re.length / 2;
  if (half < 1) return { re, im };
  const every = (values: Float64Array, from: number) =>
    Float64Array.from({ length: half }, (_, i) => values[2 * i + from]!);
  const even = transformed(every(re, 0), every(im, 0));
  const odd = transformed(every(re, 1), every(im, 1));
  const out = { re: new Float64Array(2 * half), im: new Float64Array(2 * half) };
  for (let k = 0; k < half; k++) {
    const [c, s] = [Math.cos((Math.PI * k) / half), -Math.sin((Math.PI * k) / half)];
    const a = odd.re[k]! * c - odd.im[k]! * s;
    const b = odd.re[k]! * s + odd.im[k]! * c;
    out.re[k] = even.re[k]! + a;
    out.im[k] = even.im[k]! + b;
    out.re[k + half] = even.re[k]! - a;
    out.im[k + half] = even.im[k]! - b;
  }
  return out;
}

/** How much of a frequency an edge leaves at a sampling rate: the spectrum of one lone edge's differences. */
function edgeOf(rate: Hertz): (hertz: Hertz) => Complex {
  const astable = pulseOf(20, 0.5);
  const time = astable.chargeOhms * astable.farads * Math.log(3);
  const { samples } = renderTake(pulseSettings(20, 0.5, ONLY_A), LIGHT, time + 0.01, rate);
  const first = Math.floor(time * rate) - 40;
  const differences = Array.from({ length: 80 }, (_, i) => samples[first + i]! - samples[first + i - 1]!);
  return (hertz) => {
    let re = 0;
    let im = 0;
    for (const [i, value] of differences.entries()) {
      const angle = -2 * Math.PI * hertz * ((first + i) / rate - time);
      re -= value * Math.cos(angle);
      im -= value * Math.sin(angle);
    }
    // A difference of neighbours is an average of the slope over one sample, half a sample late.
    const half = (Math.PI * hertz) / rate;
    const share = Math.sin(half) / half;
    const [c, s] = [Math.cos(half) / share, Math.sin(half) / share];
    return { re: re * c - im * s, im: re * s + im * c };
  };
}

function divided({ re, im }: Spectrum, bin: number, by: Complex): Complex {
  const size = by.re * by.re + by.im * by.im;
  const [a, b] = [re[bin]!, im[bin]!];
  return { re: (a * by.re + b * by.im) / size, im: (b * by.re - a * by.im) / size };
}
