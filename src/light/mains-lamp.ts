/**
 * Lamps on the mains: how deep their light ripples, whether that is seen or disturbs, and what a camera makes of
 * it. Light ripples at twice the mains frequency. Depth = (max − min)/(max + min), a share 0…1; hertz, seconds.
 */
import type { Fraction, Hertz, Seconds } from '../quantity/units.ts';
import type { Ripple, RippleShape } from './ripple.ts';

export type MainsHertz = 50 | 60;

export interface MainsLamp {
  /** Depth that is used here, within the span that is told of such lamps. */
  readonly depth: Fraction;
  readonly depthSpan: { readonly min: Fraction; readonly max: Fraction };
  /** Flicker index that is told of such lamps; null where none is. */
  readonly indexSpan: { readonly min: Fraction; readonly max: Fraction } | null;
  /** Chosen so that depth and index belong together. */
  readonly shape: RippleShape;
  readonly duty?: Fraction;
  readonly source: string;
}

const TABLE =
  'from memory, after Lehman, Wilkins, Berman, Poplawski and Miller, Proposing measures of flicker in the low frequencies (2011)';

export const MAINS_LAMPS = {
  incandescent: {
    depth: 0.066,
    depthSpan: { min: 0.06, max: 0.07 },
    indexSpan: { min: 0.02, max: 0.02 },
    shape: 'sine',
    source: TABLE,
  },
  halogen: {
    depth: 0.08,
    depthSpan: { min: 0.05, max: 0.1 },
    indexSpan: null,
    shape: 'sine',
    source: 'trade figure; 50 Hz gives more than 60 Hz, a thin filament more than a thick one',
  },
  'fluorescent-magnetic': {
    depth: 0.28,
    depthSpan: { min: 0.28, max: 0.28 },
    indexSpan: { min: 0.07, max: 0.07 },
    shape: 'rectified',
    source: TABLE,
  },
  'compact-magnetic': {
    depth: 0.37,
    depthSpan: { min: 0.37, max: 0.37 },
    indexSpan: { min: 0.11, max: 0.11 },
    shape: 'sine',
    source: TABLE,
  },
  'compact-electronic': {
    depth: 0.05,
    depthSpan: { min: 0.02, max: 0.08 },
    indexSpan: { min: 0, max: 0.02 },
    shape: 'sine',
    source: TABLE,
  },
  'metal-halide': {
    depth: 0.52,
    depthSpan: { min: 0.52, max: 0.52 },
    indexSpan: { min: 0.16, max: 0.16 },
    shape: 'sine',
    source: TABLE,
  },
  'sodium-high-pressure': {
    depth: 0.95,
    depthSpan: { min: 0.95, max: 0.95 },
    indexSpan: { min: 0.3, max: 0.3 },
    shape: 'sine',
    source: TABLE,
  },
  'led-smooth': {
    depth: 0.02,
    depthSpan: { min: 0, max: 0.03 },
    indexSpan: { min: 0, max: 0.01 },
    shape: 'sine',
    source: TABLE,
  },
  'led-poor': {
    depth: 1,
    depthSpan: { min: 0.5, max: 1 },
    indexSpan: { min: 0.45, max: 0.45 },
    shape: 'pulse',
    duty: 0.55,
    source: TABLE,
  },
  'led-rectified': {
    depth: 1,
    depthSpan: { min: 0.9, max: 1 },
    indexSpan: null,
    shape: 'rectified',
    source: 'the current follows the rectified mains voltage; from memory',
  },
} as const satisfies Record<string, MainsLamp>;

export type MainsLampId = keyof typeof MAINS_LAMPS;

/** A lamp's ripple on mains of 50 or 60 Hz: light at 100 or 120 Hz. */
export function lampRipple(id: MainsLampId, mains: MainsHertz): Ripple {
  const lamp: MainsLamp = MAINS_LAMPS[id];
  const { depth, shape, duty } = lamp;
  return { hertz: 2 * mains, depth, shape, ...(duty === undefined ? {} : { duty }) };
}

/**
 * Deepest ripple for low risk and for no observable effect, at a frequency; null = no limit there.
 * IEEE 1789-2015, 8.1.1, as public software codes it.
 */
export function ieee1789Limits(hertz: Hertz): {
  readonly lowRisk: Fraction | null;
  readonly noEffect: Fraction | null;
} {
  if (hertz < 8) return { lowRisk: 0.002, noEffect: 0.001 };
  return {
    lowRisk: hertz > 1250 ? null : (hertz < 90 ? 0.00025 : 0.0008) * hertz,
    noEffect: hertz > 3000 ? null : (hertz < 90 ? 0.0001 : 0.000333) * hertz,
  };
}

export type FlickerVerdict = 'no effect' | 'low risk' | 'above both';

/** Where a ripple stands against IEEE 1789-2015, 8.1.1. */
export function ieee1789Verdict(depth: Fraction, hertz: Hertz): FlickerVerdict {
  const { lowRisk, noEffect } = ieee1789Limits(hertz);
  if (noEffect === null || depth <= noEffect) return 'no effect';
  return lowRisk === null || depth <= lowRisk ? 'low risk' : 'above both';
}

/** The beat a camera sees: how far the ripple is from the nearest multiple of the frame rate. */
export function cameraAlias(hertz: Hertz, frameRate: Hertz): Hertz {
  return Math.abs(hertz - Math.round(hertz / frameRate) * frameRate);
}

/** Share of the ripple that is left after an exposure of this length: |sinc|, exact for a sine. */
export function exposureKeeps(hertz: Hertz, seconds: Seconds): Fraction {
  const turns = Math.PI * hertz * seconds;
  return turns === 0 ? 1 : Math.abs(Math.sin(turns) / turns);
}
