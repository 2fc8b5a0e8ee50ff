/**
 * The pitch of a recording of one voice, and what it says of the board. The rough pitch is pitchy's (McLeod's
 * normalised square difference: small, well kept, MIT), as it does not mistake a square wave's overtones for its
 * pitch; two voices at once it hears as their common sub-octave, so one voice at a time. The fine pitch comes from
 * how the phase of every overtone turns between successive stretches, least squares over all of them: that far, noise
 * averages out; overtones that fall on mains hum are left out where there are others. SI units.
 */
import { PitchDetector } from 'pitchy';
import { astableOf, cycleOf } from '../circuit/astable.ts';
import type { Design } from '../design/design.ts';
import { centsBetween } from '../plan/notes.ts';
import type { Farads, Fraction, Hertz, Seconds, VoiceId, Volts } from '../quantity/units.ts';
import { rotationFor } from './rotation.ts';

export type PitchHeard =
  | {
      readonly kind: 'pitch';
      readonly hertz: Hertz /** 0…1: how periodic it is. */;
      readonly clarity: Fraction;
    }
  | { readonly kind: 'none'; readonly why: 'too short' | 'silent' | 'no steady pitch' };

/** What is looked for: voices from 40 Hz to 2 kHz with something to spare. */
const LOWEST: Hertz = 30;
const HIGHEST: Hertz = 5000;
const SHORTEST: Seconds = 0.25;
/** Longest stretch that is used: more adds nothing. */
const LONGEST: Seconds = 4;
/** Below this RMS (full scale 1) there is nothing to hear. */
const SILENT = 1e-4;
const CLEAR = 0.7;

/** The pitch of one voice in a recording, any scale; `sampleRate` in Hz. */
export function pitchOf(samples: Float32Array, sampleRate: Hertz): PitchHeard {
  const most = Math.floor(LONGEST * sampleRate);
  const used =
    samples.length > most ? samples.subarray((samples.length - most) >> 1).subarray(0, most) : samples;
  if (used.length < SHORTEST * sampleRate) return { kind: 'none', why: 'too short' };
  const steady = withoutMean(used);
  const rms = Math.sqrt(steady.reduce((sum, x) => sum + x * x, 0) / steady.length);
  if (!(rms > SILENT)) return { kind: 'none', why: 'silent' };
  const rough = roughPitch(steady, sampleRate);
  if (rough === null) return { kind: 'none', why: 'no steady pitch' };
  const hertz = finePitch(steady, sampleRate, rough.hertz);
  return { kind: 'pitch', hertz, clarity: rough.clarity };
}

function withoutMean(samples: Float32Array): Float32Array {
  const mean = samples.reduce((sum, x) => sum + x, 0) / samples.length;
  return samples.map((x) => x - mean);
}

/** Middle one of several looks along the recording; null when too few of them hear a pitch. */
function roughPitch(
  samples: Float32Array,
  sampleRate: Hertz,
): { readonly hertz: Hertz; readonly clarity: Fraction } | null {
  // Two and a half periods of the lowest pitch.
  const size = 2 ** Math.ceil(Math.log2((2.5 * sampleRate) / LOWEST));
  const window = Math.min(size, 2 ** Math.floor(Math.log2(samples.length)));
  const detector = PitchDetector.forFloat32Array(window);
  const looks = 9;
  const found: { hertz: Hertz; clarity: Fraction }[] = [];
  for (let look = 0; look < looks; look++) {
    const start = Math.floor(((samples.length - window) * look) / (looks - 1));
    const [hertz, clarity] = detector.findPitch(samples.subarray(start, start + window), sampleRate);
    if (clarity >= CLEAR && hertz >= LOWEST && hertz <= HIGHEST) found.push({ hertz, clarity });
  }
  if (found.length < looks / 2) return null;
  return found.toSorted((a, b) => a.hertz - b.hertz)[found.length >> 1]!;
}

/** Mains hum, and as many multiples as matter. */
const HUM: readonly Hertz[] = [50, 60];
/** Overtones used. */
const OVERTONES = 15;
/** Stretches the recording is cut into, each overlapping the next by half. */
const STRETCHES = 7;

function finePitch(samples: Float32Array, sampleRate: Hertz, rough: Hertz): Hertz {
  let hertz = rough;
  // From the first overtones to all: the pitch must be known to half a turn of an overtone between two stretches.
  for (const [stretches, overtones] of [
    [63, 1],
    [63, 3],
    [31, 5],
    [15, 9],
    [STRETCHES, OVERTONES],
    [STRETCHES, OVERTONES],
  ] as const)
    hertz = refined(samples, sampleRate, hertz, stretches, overtones);
  return hertz;
}

function refined(
  samples: Float32Array,
  sampleRate: Hertz,
  hertz: Hertz,
  wanted: number,
  overtones: number,
): Hertz {
  // A stretch holds at least six periods, so that overtones do not lean on each other.
  const least = Math.ceil((6 * sampleRate) / hertz);
  const stretches = Math.max(2, Math.min(wanted, Math.floor((2 * samples.length) / least) - 1));
  const hop = Math.floor(samples.length / (stretches + 1));
  const length = 2 * hop;
  const window = Float64Array.from(
    { length },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length),
  );
  const usable = Array.from({ length: overtones }, (_, i) => i + 1).filter(
    (k) => k * hertz < 0.45 * sampleRate,
  );
  const width = (2 * sampleRate) / length;
  const clean = usable.filter((k) => HUM.every((hum) => Math.abs(k * hertz - hum) > width));
  const used = clean.length > 0 ? clean : usable;
  let [top, bottom] = [0, 0];
  for (const k of used) {
    const turns = phasors(samples, window, hop, stretches, (k * hertz) / sampleRate);
    // Mean turn from one stretch to the next, each weighed by its power.
    let [re, im, power] = [0, 0, 0];
    for (let s = 1; s < stretches; s++) {
      const [a, b] = [turns[s - 1]!, turns[s]!];
      re += b[0] * a[0] + b[1] * a[1];
      im += b[1] * a[0] - b[0] * a[1];
      power += Math.hypot(a[0], a[1]) * Math.hypot(b[0], b[1]);
    }
    if (!(power > 0)) continue;
    const off = (Math.atan2(im, re) * sampleRate) / (2 * Math.PI * hop * k);
    const weight = power * k * k;
    top += weight * off;
    bottom += weight;
  }
  return bottom > 0 ? hertz + top / bottom : hertz;
}

/** Each stretch seen in a frame that turns with the given frequency (cycles a sample). */
function phasors(
  samples: Float32Array,
  window: Float64Array,
  hop: number,
  stretches: number,
  cycles: number,
): readonly (readonly [number, number])[] {
  const step = 2 * Math.PI * cycles;
  const [cosStep, sinStep] = [Math.cos(step), Math.sin(step)];
  return Array.from({ length: stretches }, (_, s) => {
    const start = s * hop;
    let [c, d] = [Math.cos(step * start), -Math.sin(step * start)];
    let [re, im] = [0, 0];
    for (let i = 0; i < window.length; i++) {
      const x = samples[start + i]! * window[i]!;
      re += x * c;
      im += x * d;
      [c, d] = [c * cosStep + d * sinStep, d * cosStep - c * sinStep];
    }
    return [re, im] as const;
  });
}

export interface PitchCheck {
  /** Above (+) or below (−) the target. */
  readonly cents: number;
  /** Where the trimmer must go for the target, by this board's own capacitor; null = out of its reach. */
  readonly rotation: Fraction | null;
  /** How far that is from where it stands: + clockwise. Null with `rotation`. */
  readonly turn: Fraction | null;
  /** The capacitor that explains the pitch, all else as designed: with it goes the chip's own error. */
  readonly farads: Farads;
  /** Its share of the design's. */
  readonly ratio: number;
}

/** What a heard pitch says of a voice whose trimmer stands as the design says. Null when the design never runs. */
export function checkPitch(
  design: Design,
  voice: VoiceId,
  railVolts: Volts,
  heard: Hertz,
  target: Hertz,
): PitchCheck | null {
  const expected = cycleOf(astableOf(design, voice, railVolts)).frequency;
  if (expected <= 0 || heard <= 0) return null;
  const v = design.voices[voice];
  // The period is straight in the capacitance.
  const ratio = expected / heard;
  const farads = v.capacitor.farads * ratio;
  const asBuilt = {
    ...design,
    voices: { ...design.voices, [voice]: { ...v, capacitor: { ...v.capacitor, farads } } },
  };
  const rotation = rotationFor(asBuilt, voice, railVolts, target);
  return {
    cents: centsBetween(target, heard),
    rotation,
    turn: rotation === null ? null : rotation - v.trimmer.rotation,
    farads,
    ratio,
  };
}
