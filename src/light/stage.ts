/**
 * The stage: a table with two sensors, one lamp above the middle between them, the room's own light, and a
 * hand from each side. Lux at both sensors from where things are. Metres, candela, lux; the table's middle is
 * x = 0, sensor A lies left of it, B right.
 */
import type { Candela, Fraction, Lux, Metres, Pair, VoiceId } from '../quantity/units.ts';
import { pairOf } from '../quantity/units.ts';
import { HAND_RADIUS, illuminanceFrom, lampLeft, skyLeft } from './hand.ts';

export interface Stage {
  readonly lampOn: boolean;
  readonly lampCandela: Candela;
  /** Lamp above the table. */
  readonly lampMetres: Metres;
  /** The room's own light, taken as coming evenly from the whole half sphere above. */
  readonly roomLux: Lux;
  /** From sensor A to sensor B. */
  readonly spacingMetres: Metres;
  /** Both hands above the table. */
  readonly handMetres: Metres;
  /** How far each hand has come over its sensor: 0 = at rest outside, 1 = centred above it. */
  readonly cover: Pair<Fraction>;
}

/** Sideways way of a hand from rest to its sensor. At rest a hand still takes a little of the room's light. */
export const HAND_TRAVEL: Metres = 0.24;

/** A small table lamp. */
const LAMP_DIAMETER: Metres = 0.06;

interface Limits {
  readonly min: number;
  readonly max: number;
}

/**
 * What each control reaches. Within these a hand centred over its sensor hides the whole lamp from it: a
 * higher hand, a lower lamp or sensors further apart would let the lamp shine in under the hand.
 */
export const STAGE_LIMITS = {
  lampCandela: { min: 1, max: 3000 },
  lampMetres: { min: 0.4, max: 2 },
  roomLux: { min: 0, max: 2000 },
  spacingMetres: { min: 0.1, max: 0.24 },
  handMetres: { min: 0.02, max: 0.15 },
  cover: { min: 0, max: 1 },
} as const satisfies Record<string, Limits>;

/** A sensor with no hand near it gets 300 lx: 280 from the lamp and 20 from the room. */
export const DEFAULT_STAGE: Stage = {
  lampOn: true,
  lampCandela: candelaFor(280, 0.6, 0.18),
  lampMetres: 0.6,
  roomLux: 20,
  spacingMetres: 0.18,
  handMetres: 0.05,
  cover: { A: 0, B: 0 },
};

/** Where on the table a sensor lies. */
export function sensorPlace(stage: Stage, voice: VoiceId): Metres {
  return sideOf(voice) * (stage.spacingMetres / 2);
}

/** Where above the table the middle of the hand for this sensor is; A's comes from the left, B's from the right. */
export function handPlace(stage: Stage, voice: VoiceId): Metres {
  return sensorPlace(stage, voice) + sideOf(voice) * (1 - stage.cover[voice]) * HAND_TRAVEL;
}

/**
 * Lux at each sensor. Each hand shades both sensors from where it is. The shares that two hands leave are
 * multiplied: exact while one of them hides all or nothing, an approximation where both hide a part.
 */
export function stageLux(stage: Stage): Pair<Lux> {
  const lamp = stage.lampOn ? lampLuxAtTable(stage) : 0;
  return pairOf((voice) => {
    const left = sharesLeft(stage, voice);
    return lamp * left.lamp + stage.roomLux * left.room;
  });
}

/** Lux the lamp gives at either sensor when it is on and no hand is in the way: E = I·cos³θ/h². */
export function lampLuxAtTable(stage: Pick<Stage, 'lampCandela' | 'lampMetres' | 'spacingMetres'>): Lux {
  return stage.lampCandela * luxPerCandela(stage.lampMetres, stage.spacingMetres);
}

/** The lamp that gives this much at either sensor from this height; the inverse of `lampLuxAtTable`. */
export function candelaFor(lux: Lux, lampMetres: Metres, spacingMetres: Metres): Candela {
  return lux / luxPerCandela(lampMetres, spacingMetres);
}

function luxPerCandela(lampMetres: Metres, spacingMetres: Metres): number {
  const sideways = spacingMetres / 2;
  return illuminanceFrom(1, Math.hypot(lampMetres, sideways), Math.atan2(sideways, lampMetres));
}

/** Shares of the lamp's and of the room's light that both hands leave at one sensor. */
function sharesLeft(stage: Stage, voice: VoiceId): { lamp: Fraction; room: Fraction } {
  const sensor = sensorPlace(stage, voice);
  const behind = pairOf((hand) => {
    const offset = handPlace(stage, hand) - sensor;
    return {
      lamp: lampLeft({
        handRadius: HAND_RADIUS,
        height: stage.handMetres,
        offset,
        lampDiameter: LAMP_DIAMETER,
        lampDistance: stage.lampMetres,
        lampOffset: -sensor,
      }),
      room: skyLeft(HAND_RADIUS, stage.handMetres, offset),
    };
  });
  return { lamp: behind.A.lamp * behind.B.lamp, room: behind.A.room * behind.B.room };
}

function sideOf(voice: VoiceId): -1 | 1 {
  return voice === 'A' ? -1 : 1;
}
