/**
 * A hand waved to and fro over both sensors, under one lamp above the middle between them. The hand is a disc
 * that crosses at an even pace, then rests outside; its height differs from crossing to crossing. Light by the
 * shadow laws of `hand.ts`; the lamp is a small round one. Metres, lux, seconds.
 */
import type { Lux, Metres, Seconds, VoiceId } from '../quantity/units.ts';
import { VOICES } from '../quantity/units.ts';
import { HAND_RADIUS, lampLeft, skyLeft } from './hand.ts';
import { chance, type Passing, paceOf, passAt, periodOf, sooner, startOf } from './irregular.ts';
import { HAND_TRAVEL } from './stage.ts';

export interface HandWave extends Passing {
  readonly kind: 'hand-wave';
  /** One crossing, from rest on one side to rest on the other. */
  readonly crossSeconds: Seconds;
  readonly handMetres: Metres;
  readonly lampMetres: Metres;
  /** At a sensor with nothing in the way: from the lamp, and from the room all round. */
  readonly lampLux: Lux;
  readonly roomLux: Lux;
  readonly spacingMetres: Metres;
}

const LAMP_DIAMETER: Metres = 0.06;
const HEIGHT_PURPOSE = 11;
/** Heights differ by up to this share either way. */
const HEIGHT_SPREAD = 0.4;

/** Reused for every reading: the audio thread must not allocate. */
const shade = {
  handRadius: HAND_RADIUS,
  height: 0,
  offset: 0,
  lampDiameter: LAMP_DIAMETER,
  lampDistance: 1,
  lampOffset: 0,
};

export function handWaveLux(wave: HandWave, voice: VoiceId, t: Seconds): Lux {
  const period = periodOf(wave, wave.crossSeconds);
  const pass = passAt(t, period);
  const length = wave.crossSeconds / paceOf(wave, pass);
  const start = startOf(wave, pass, period, length);
  const rest = restAt(wave);
  const from = pass % 2 === 0 ? -rest : rest;
  let place = from;
  let height = heightOf(wave, pass);
  if (t < start) {
    if (pass > 0) height = heightBetween(wave, pass - 1, period, t);
  } else if (t > start + length) {
    place = -from;
    height = heightBetween(wave, pass, period, t);
  } else place = from * (1 - (2 * (t - start)) / length);

  const sensor = sensorAt(wave, voice);
  shade.height = height;
  shade.offset = place - sensor;
  shade.lampDistance = wave.lampMetres;
  shade.lampOffset = -sensor;
  return wave.lampLux * lampLeft(shade) + wave.roomLux * skyLeft(HAND_RADIUS, height, shade.offset);
}

/** A crossing begins or ends, or the hand's edge begins or ends to hide the lamp from a sensor. */
export function handWaveBreak(wave: HandWave, t: Seconds): Seconds {
  const period = periodOf(wave, wave.crossSeconds);
  const now = passAt(t, period);
  const rest = restAt(wave);
  let best = Number.POSITIVE_INFINITY;
  for (let pass = now; pass <= now + 1; pass++) {
    const length = wave.crossSeconds / paceOf(wave, pass);
    const start = startOf(wave, pass, period, length);
    best = sooner(best, start, t);
    best = sooner(best, start + length, t);
    const scale = heightOf(wave, pass) / wave.lampMetres;
    const lamp = (LAMP_DIAMETER / 2) * scale;
    const side = pass % 2 === 0 ? 1 : -1;
    for (const voice of VOICES) {
      const middle = sensorAt(wave, voice) * (1 - scale);
      for (let edge = 0; edge < 4; edge++) {
        const apart = HAND_RADIUS + (edge & 1 ? lamp : -lamp);
        const place = middle + (edge & 2 ? apart : -apart);
        best = sooner(best, start + (length * (1 + (side * place) / rest)) / 2, t);
      }
    }
  }
  return best;
}

function restAt(wave: HandWave): Metres {
  return wave.spacingMetres / 2 + HAND_TRAVEL;
}

function sensorAt(wave: HandWave, voice: VoiceId): Metres {
  return voice === 'A' ? -wave.spacingMetres / 2 : wave.spacingMetres / 2;
}

function heightOf(wave: HandWave, pass: number): Metres {
  const uneven = 2 * chance(wave.seed, pass, HEIGHT_PURPOSE) - 1;
  return wave.handMetres * (1 + HEIGHT_SPREAD * wave.irregular * uneven);
}

/** While the hand rests after a pass it goes over to the height of the next. */
function heightBetween(wave: HandWave, pass: number, period: Seconds, t: Seconds): Metres {
  const length = wave.crossSeconds / paceOf(wave, pass);
  const end = startOf(wave, pass, period, length) + length;
  const next = startOf(wave, pass + 1, period, wave.crossSeconds / paceOf(wave, pass + 1));
  const share = Math.min(1, Math.max(0, (t - end) / (next - end)));
  return heightOf(wave, pass) * (1 - share) + heightOf(wave, pass + 1) * share;
}
