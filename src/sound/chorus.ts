/**
 * Several instruments at once, spread across the room from left to right with constant power, as two channels whose
 * peak stays within full scale. Made kit by kit, so that whoever asks can do other things in between.
 */
import type { LightProgram } from '../light/program.ts';
import type { Hertz, Seconds } from '../quantity/units.ts';
import { renderTake } from './render.ts';
import type { EngineSettings } from './settings.ts';

export interface Stereo {
  readonly left: Float32Array<ArrayBuffer>;
  readonly right: Float32Array<ArrayBuffer>;
  readonly sampleRate: Hertz;
}

/** Renders the instruments together; yields after each how many are done. */
export function* chorusOf(
  instruments: readonly EngineSettings[],
  program: LightProgram,
  seconds: Seconds,
  sampleRate: Hertz,
): Generator<number, Stereo> {
  const length = Math.round(seconds * sampleRate);
  const left = new Float32Array(length);
  const right = new Float32Array(length);
  for (const [i, settings] of instruments.entries()) {
    const { samples } = renderTake(settings, program, seconds, sampleRate);
    const place = instruments.length === 1 ? 0.5 : i / (instruments.length - 1);
    // Powers of many instruments add up, not their peaks: the level of all is near that of one.
    const share = 1 / (settings.jack.boundVolts * Math.sqrt(instruments.length));
    const toLeft = share * Math.cos((place * Math.PI) / 2);
    const toRight = share * Math.sin((place * Math.PI) / 2);
    for (let n = 0; n < length; n++) {
      left[n]! += toLeft * samples[n]!;
      right[n]! += toRight * samples[n]!;
    }
    yield i + 1;
  }
  withinFullScale(left, right);
  return { left, right, sampleRate };
}

function withinFullScale(left: Float32Array, right: Float32Array): void {
  let peak = 1;
  for (const channel of [left, right]) for (const sample of channel) peak = Math.max(peak, Math.abs(sample));
  if (peak === 1) return;
  for (const channel of [left, right]) for (let n = 0; n < channel.length; n++) channel[n]! /= peak;
}
