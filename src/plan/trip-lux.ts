/**
 * A voice's gate at a rotation as two levels of mean light: above `upper` it does what light asks of it and keeps
 * doing it, below `lower` what shade asks; ripple and noise are taken into account. Between them it remembers, or
 * chatters. Lux; 0 and Infinity where no light, or any, will do.
 */
import type { Ripple } from '../light/ripple.ts';
import type { Fraction, Lux, Volts } from '../quantity/units.ts';
import { type ConductanceBand, luxForBand } from './ripple-band.ts';
import { type Question, tippingSiemens, type VoiceSetting } from './setting.ts';

/**
 * Node noise counts as this many standard deviations: the comparator is then tipped by it less than once an hour
 * (3000 independent values a second, 2·Φ·(1 − Φ) each).
 */
const NOISE_DEVIATIONS = 5.4;

/** What disturbs a gate: a lamp's ripple, and noise at the node. */
export interface Disturbance {
  readonly ripple: Ripple | null;
  readonly noiseVolts: Volts;
}

export interface TripLux {
  /** More mean light than this is light, whatever was before. */
  readonly upper: Lux;
  /** Less mean light than this is shade. */
  readonly lower: Lux;
}

/** The demands that light (or shade) makes: to go there, and to stay there. */
export interface Demand {
  readonly kind: 'entry' | 'stay';
  /** Own output at the moment that counts. */
  readonly high: boolean;
  /** End of the rippling conductance that counts. */
  readonly end: keyof ConductanceBand;
  /** Noise on the node that counts, V. */
  readonly shift: Volts;
}

export function demandsOf(
  setting: Pick<VoiceSetting, 'nodeRises' | 'soundsInLight'>,
  level: 'lit' | 'shade',
  noiseVolts: Volts,
): readonly [Demand, Demand] {
  const isLit = level === 'lit';
  const highThere = setting.soundsInLight === isLit;
  // Noise that matters pushes the node back to where it came from; on entry it can only help.
  const back = setting.nodeRises === isLit ? -1 : 1;
  return [
    { kind: 'entry', high: !highThere, end: isLit ? 'high' : 'low', shift: 0 },
    {
      kind: 'stay',
      high: highThere,
      end: isLit ? 'low' : 'high',
      shift: back * NOISE_DEVIATIONS * noiseVolts,
    },
  ];
}

/** The question behind a demand, for a rippling conductance. */
export function questionOf(setting: VoiceSetting, demand: Demand, band: ConductanceBand): Question {
  const { r10Ohms, darkSiemens } = setting.gate;
  return {
    high: demand.high,
    siemens: Math.max(darkSiemens, band[demand.end] / r10Ohms),
    shift: demand.shift,
  };
}

export function tripLuxAt(
  setting: VoiceSetting,
  rotation: Fraction,
  { ripple, noiseVolts }: Disturbance,
): TripLux {
  const levels = (level: 'lit' | 'shade') =>
    demandsOf(setting, level, noiseVolts).flatMap((demand) =>
      tippingSiemens(setting, rotation, demand.high, demand.shift).map((siemens) => {
        if (typeof siemens === 'number') return luxAt(setting, ripple, demand.end, siemens);
        // Above the trip always: with a node that rises in light, that is light at any level.
        return (siemens === 'always above') === setting.nodeRises ? 0 : Number.POSITIVE_INFINITY;
      }),
    );
  return { upper: Math.max(...levels('lit')), lower: Math.min(...levels('shade')) };
}

function luxAt(
  setting: VoiceSetting,
  ripple: Ripple | null,
  end: keyof ConductanceBand,
  siemens: number,
): Lux {
  // Darker than dark the cell's resistance stands still: no shade reaches there.
  if (siemens <= setting.gate.darkSiemens) return 0;
  return luxForBand(setting.speed, ripple, end, siemens * setting.gate.r10Ohms);
}
