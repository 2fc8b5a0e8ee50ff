/**
 * WAV files of one channel, 32-bit float: RIFF header, `fmt `, `fact`, `data`, all little-endian (Microsoft,
 * Multimedia Data Standards Update, 1994: formats other than PCM carry an extension size and a `fact` chunk).
 */
import type { Jack } from '../circuit/output.ts';
import type { Hertz, Volts } from '../quantity/units.ts';
import { MOST_OVERSHOOT } from './bandlimit.ts';

/** Bytes ahead of the first sample. */
export const WAV_HEADER_BYTES = 58;
const BYTES_PER_SAMPLE = 4;
/** Format tag of samples as IEEE floating-point numbers. */
const IEEE_FLOAT = 3;
/** Sizes are 32-bit numbers, so more samples than this fit in no file. */
export const MOST_WAV_SAMPLES = Math.floor((0xffff_ffff - WAV_HEADER_BYTES) / BYTES_PER_SAMPLE);

/**
 * Volts that stand for a sample of 1: a property of the design alone, never of what a take happens to hold.
 * A jack that carries no voltage at all has 1 V, so that silence stays silence.
 */
export function fullScaleVolts(jack: Jack): Volts {
  return jack.boundVolts > 0 ? jack.boundVolts * MOST_OVERSHOOT : 1;
}

/** All that stands before the samples. Throws a RangeError for more samples than the format can count. */
export function wavHeader(samples: number, sampleRate: Hertz): Uint8Array<ArrayBuffer> {
  if (samples > MOST_WAV_SAMPLES)
    throw new RangeError(`A WAV file holds at most ${MOST_WAV_SAMPLES} samples`);
  const bytes = new Uint8Array(WAV_HEADER_BYTES);
  const view = new DataView(bytes.buffer);
  const dataBytes = samples * BYTES_PER_SAMPLE;
  let at = 0;
  const text = (value: string) => {
    for (const letter of value) view.setUint8(at++, letter.charCodeAt(0));
  };
  const u16 = (value: number) => {
    view.setUint16(at, value, true);
    at += 2;
  };
  const u32 = (value: number) => {
    view.setUint32(at, value, true);
    at += 4;
  };
  text('RIFF');
  u32(WAV_HEADER_BYTES - 8 + dataBytes);
  text('WAVE');
  text('fmt ');
  u32(18);
  u16(IEEE_FLOAT);
  u16(1);
  u32(sampleRate);
  u32(sampleRate * BYTES_PER_SAMPLE);
  u16(BYTES_PER_SAMPLE);
  u16(8 * BYTES_PER_SAMPLE);
  u16(0);
  text('fact');
  u32(4);
  u32(samples);
  text('data');
  u32(dataBytes);
  return bytes;
}

/** Samples as the bytes of the data chunk, whatever this machine's byte order. */
export function wavBytes(samples: Float32Array): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(samples.length * BYTES_PER_SAMPLE);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < samples.length; i++) view.setFloat32(i * BYTES_PER_SAMPLE, samples[i]!, true);
  return bytes;
}

/** A whole file. Samples as they are: 1 is full scale, and nothing is normalised. */
export function wavOf(samples: Float32Array, sampleRate: Hertz): Uint8Array<ArrayBuffer> {
  const file = new Uint8Array(WAV_HEADER_BYTES + samples.length * BYTES_PER_SAMPLE);
  file.set(wavHeader(samples.length, sampleRate));
  file.set(wavBytes(samples), WAV_HEADER_BYTES);
  return file;
}
