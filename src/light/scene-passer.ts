/**
 * People who walk past: a shadow as wide as a person, with soft edges, crosses both sensors at walking pace.
 * The light falls straight over the soft edge. Metres, lux, seconds.
 */
import type { Fraction, Lux, Metres, Seconds, VoiceId } from '../quantity/units.ts';
import { VOICES } from '../quantity/units.ts';
import { chance, mixed, type Passing, paceOf, passAt, periodOf, sooner, startOf } from './irregular.ts';

export interface PasserBy extends Passing {
  readonly kind: 'passer-by';
  readonly metresPerSecond: number;
  /** A to B, B to A, or as the seed has it for each. */
  readonly direction: 'a-to-b' | 'b-to-a' | 'either';
  /** Width of the shadow at half its depth. */
  readonly shadowMetres: Metres;
  /** Width of the soft edge on each side. */
  readonly softMetres: Metres;
  readonly spacingMetres: Metres;
  readonly litLux: Lux;
  readonly shadeLux: Lux;
}

const PURPOSE = { direction: 21, depth: 22 } as const;
/** A small person takes up to this share less of the light. */
const DEPTH_SPREAD = 0.4;

export function passerByLux(passer: PasserBy, voice: VoiceId, t: Seconds): Lux {
  const usual = (2 * reachOf(passer)) / passer.metresPerSecond;
  const period = periodOf(passer, usual);
  const pass = passAt(t, period);
  const pace = paceOf(passer, pass);
  const start = startOf(passer, pass, period, usual / pace);
  const along = passer.metresPerSecond * pace * (t - start) - reachOf(passer);
  const apart = Math.abs(signOf(passer, pass) * along - sensorAt(passer, voice));
  const depth = 1 - DEPTH_SPREAD * passer.irregular * chance(passer.seed, pass, PURPOSE.depth);
  return mixed(passer.litLux, passer.shadeLux, depth * shadowShare(passer, apart));
}

/** A soft edge begins or ends at a sensor. */
export function passerByBreak(passer: PasserBy, t: Seconds): Seconds {
  const usual = (2 * reachOf(passer)) / passer.metresPerSecond;
  const period = periodOf(passer, usual);
  const now = passAt(t, period);
  const outer = (passer.shadowMetres + passer.softMetres) / 2;
  const inner = Math.abs(passer.shadowMetres - passer.softMetres) / 2;
  let best = Number.POSITIVE_INFINITY;
  for (let pass = now; pass <= now + 1; pass++) {
    const pace = paceOf(passer, pass);
    const start = startOf(passer, pass, period, usual / pace);
    const speed = passer.metresPerSecond * pace;
    for (const voice of VOICES) {
      const middle = signOf(passer, pass) * sensorAt(passer, voice) + reachOf(passer);
      best = sooner(best, start + (middle - outer) / speed, t);
      best = sooner(best, start + (middle - inner) / speed, t);
      best = sooner(best, start + (middle + inner) / speed, t);
      best = sooner(best, start + (middle + outer) / speed, t);
    }
  }
  return best;
}

/** Share of the light that the shadow takes this far from its middle: a trapezoid. */
function shadowShare({ shadowMetres, softMetres }: PasserBy, apart: Metres): Fraction {
  const most = Math.min(1, shadowMetres / softMetres);
  return Math.min(most, Math.max(0, ((shadowMetres + softMetres) / 2 - apart) / softMetres));
}

/** From the middle between the sensors to where the shadow touches neither. */
function reachOf(passer: PasserBy): Metres {
  return (passer.spacingMetres + passer.shadowMetres + passer.softMetres) / 2;
}

function sensorAt(passer: PasserBy, voice: VoiceId): Metres {
  return voice === 'A' ? -passer.spacingMetres / 2 : passer.spacingMetres / 2;
}

function signOf({ direction, seed }: PasserBy, pass: number): 1 | -1 {
  if (direction === 'a-to-b') return 1;
  if (direction === 'b-to-a') return -1;
  return chance(seed, pass, PURPOSE.direction) < 0.5 ? 1 : -1;
}
