/** The WAV file read again by a parser that knows chunks, not places; and by hand, byte by byte. */
import { describe, expect, test } from 'vitest';
import { instrumentOf } from '../../src/circuit/instrument.ts';
import { renderTake } from '../../src/sound/render.ts';
import {
  fullScaleVolts,
  MOST_WAV_SAMPLES,
  WAV_HEADER_BYTES,
  wavBytes,
  wavHeader,
  wavOf,
} from '../../src/sound/wav.ts';
import { designWith } from '../circuit/building.ts';
import { LIT, settingsFrom, steady } from './playing.ts';
import { readWav } from './wav-reader.ts';

const ramp = Float32Array.from({ length: 1000 }, (_, i) => Math.sin(i) * (1 + i / 300));

describe('a WAV file', () => {
  test.each([8000, 44_100, 48_000, 192_000])('at %d samples a second gives back every sample', (rate) => {
    const wav = readWav(wavOf(ramp, rate));
    expect(wav.formatTag).toBe(3);
    expect(wav.channels).toBe(1);
    expect(wav.sampleRate).toBe(rate);
    expect(wav.bytesPerSecond).toBe(4 * rate);
    expect(wav.blockAlign).toBe(4);
    expect(wav.bits).toBe(32);
    expect(wav.factSamples).toBe(1000);
    expect(wav.samples).toEqual(ramp);
  });

  test('is not normalised: samples beyond 1 and tiny ones stay as they are', () => {
    const odd = Float32Array.of(0, -0, 1.2, -7, 1e-30, 3.4e38);
    expect(readWav(wavOf(odd, 48_000)).samples).toEqual(odd);
  });

  test('of no samples is whole, too', () => {
    const bytes = wavOf(new Float32Array(0), 48_000);
    expect(bytes.length).toBe(WAV_HEADER_BYTES);
    expect(readWav(bytes).samples.length).toBe(0);
  });

  test('begins with these bytes, for one sample of 0.5 at 48000 a second', () => {
    const hex = [...wavOf(Float32Array.of(0.5), 48_000)].map((b) => b.toString(16).padStart(2, '0')).join('');
    expect(hex).toBe(
      '524946463600000057415645' +
        '666d74201200000003000100' +
        '80bb000000ee0200040020000000' +
        '666163740400000001000000' +
        '64617461040000000000003f',
    );
  });

  test('is the header followed by the samples, so that it can be written in pieces', () => {
    const pieces = [
      wavHeader(1000, 48_000),
      wavBytes(ramp.subarray(0, 7)),
      wavBytes(ramp.subarray(7)),
    ].flatMap((piece) => [...piece]);
    expect(Uint8Array.from(pieces)).toEqual(wavOf(ramp, 48_000));
  });

  test('takes no more samples than its sizes can count', () => {
    expect(() => wavHeader(MOST_WAV_SAMPLES, 48_000)).not.toThrow();
    expect(() => wavHeader(MOST_WAV_SAMPLES + 1, 48_000)).toThrow(RangeError);
  });
});

describe('full scale', () => {
  test('is a property of the design, not of the take, and is never passed by what the jack does', () => {
    for (const design of [designWith(), designWith({ output: { coupling: null, mixOhms: null } })]) {
      const { jack } = instrumentOf(design);
      const { samples } = renderTake(settingsFrom(design), steady(LIT, LIT), 0.5);
      const peak = samples.reduce((most, volts) => Math.max(most, Math.abs(volts)), 0);
      expect(peak).toBeGreaterThan(0.3 * fullScaleVolts(jack));
      expect(peak).toBeLessThan(fullScaleVolts(jack));
    }
  });

  test('of a jack turned down to nothing is 1 V: silence, not a division by zero', () => {
    const { jack } = instrumentOf(designWith({ output: { volume: { ohms: 10_000, rotation: 0 } } }));
    expect(jack.boundVolts).toBe(0);
    expect(fullScaleVolts(jack)).toBe(1);
  });
});
