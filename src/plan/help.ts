/**
 * What a tube around the sensor or a lamp of its own would gain: the contrast between lit and shaded light, and with it
 * the width of what a setting may be off. Lux, candela, metres, shares.
 */
import type { Room } from '../design/room.ts';
import { HAND_RADIUS, tubeCutOff } from '../light/hand.ts';
import type { Candela, Fraction, Lux, Metres } from '../quantity/units.ts';
import { shadeLeft } from './event.ts';

/** Lit over shaded light now, and after the change. */
export interface Gain {
  readonly contrastNow: number;
  readonly contrastThen: number;
  /** Lit light after the change, over before: a tube also takes light away. */
  readonly litShare: number;
}

/**
 * A tube, for light from all round and an event straight above (a hand). The sensor keeps the share sin²(a) of an even
 * sky, a the tube's half angle, and the hand blocks that much more of it.
 */
export function tubeGain(
  room: Pick<Room, 'event'>,
  tube: { readonly boreRadiusMetres: Metres; readonly depthMetres: Metres },
): Gain {
  const bare = shadeLeft(room.event, null).A;
  const tubed = shadeLeft(room.event, tube).A;
  const angle = tubeCutOff(tube.boreRadiusMetres, tube.depthMetres);
  return {
    contrastNow: 1 / bare,
    contrastThen: tubed > 0 ? 1 / tubed : Number.POSITIVE_INFINITY,
    litShare: Math.sin(angle) ** 2,
  };
}

/** Highest a hand may be and still block all of what a tube lets in. */
export function tubeReach(tube: { readonly boreRadiusMetres: Metres; readonly depthMetres: Metres }): Metres {
  return HAND_RADIUS / Math.tan(tubeCutOff(tube.boreRadiusMetres, tube.depthMetres));
}

/** A lamp of its own that the event hides wholly: its light is added to the lit level alone. */
export function lampGain(lit: Lux, shadeShare: Fraction, lampLux: Lux): Gain {
  return {
    contrastNow: 1 / shadeShare,
    contrastThen: (lit + lampLux) / (lit * shadeShare),
    litShare: (lit + lampLux) / lit,
  };
}

/** Light a lamp must add for a contrast, and its intensity straight above at a distance; null where there is enough already. */
export function lampFor(
  lit: Lux,
  shadeShare: Fraction,
  contrast: number,
  metres: Metres,
): { readonly lux: Lux; readonly candela: Candela } | null {
  const lux = lit * (contrast * shadeShare - 1);
  return lux > 0 ? { lux, candela: lux * metres * metres } : null;
}
