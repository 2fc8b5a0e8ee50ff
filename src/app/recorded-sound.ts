/** The sound a design makes of recorded light, as a file. Apart from the rest, because it brings the whole engine. */
import type { Design } from '../design/design.ts';
import type { PointsProgram } from '../light/program.ts';
import { renderTake } from '../sound/render.ts';
import { settingsOf } from '../sound/settings.ts';
import { fullScaleVolts, wavOf } from '../sound/wav.ts';
import { derivedInstrument } from './derived.ts';

/** A WAV file from the first row to the last. */
export function recordedSound(design: Design, light: PointsProgram): Uint8Array<ArrayBuffer> {
  const settings = settingsOf(design, derivedInstrument(design));
  const { samples, sampleRate } = renderTake(settings, light, light.times.at(-1) ?? 0);
  const scale = 1 / fullScaleVolts(settings.jack);
  return wavOf(
    samples.map((volts) => volts * scale),
    sampleRate,
  );
}
