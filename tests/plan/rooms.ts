/** Rooms and designs for tests of settings: seeded draws, and the levels of a room without hours. */
import type { CellPosition, Design, Polarity } from '../../src/design/design.ts';
import { lampRipple, type MainsLampId } from '../../src/light/mains-lamp.ts';
import type { Disturbance } from '../../src/plan/trip-lux.ts';
import type { Extremes } from '../../src/plan/window.ts';
import { uniformFrom } from '../../src/quantity/random.ts';
import { type Pair, pairOf } from '../../src/quantity/units.ts';
import { designWith, thresholdTurned } from '../circuit/building.ts';

/** Lit and shaded light of both sensors, at any hour. */
export const levels = (
  litA: number,
  shadeA: number,
  litB: number = litA,
  shadeB: number = shadeA,
): Pair<Extremes> => ({
  A: { lit: { lux: litA, hour: 12 }, shade: { lux: shadeA, hour: 12 } },
  B: { lit: { lux: litB, hour: 12 }, shade: { lux: shadeB, hour: 12 } },
});

export const CALM: Disturbance = { ripple: null, noiseVolts: 0 };

export interface DrawnRoom {
  readonly design: Design;
  readonly extremes: Pair<Extremes>;
  readonly disturbance: Disturbance;
}

const LAMPS: readonly (MainsLampId | null)[] = [
  null,
  null,
  'fluorescent-magnetic',
  'compact-magnetic',
  'halogen',
  'metal-halide',
];

/** A design and a room, all values drawn from a seed. */
export function drawnRoom(seed: number): DrawnRoom {
  const next = uniformFrom(seed);
  const between = (low: number, high: number) => low + (high - low) * next();
  const byRatio = (low: number, high: number) => low * (high / low) ** next();
  const oneOf = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
  const position = oneOf<CellPosition>(['top', 'bottom', 'bottom']);
  const voice = () => ({
    cell: {
      family: 'cds-8-20k' as const,
      r10Ohms: byRatio(8000, 20_000),
      gamma: between(0.6, 0.8),
    },
    divider: { cell: position, fixedOhms: oneOf([3300, 4700, 6800, 10_000, 12_000]) },
    polarity: oneOf<Polarity>(['light', 'light', 'shade']),
    hysteresisOhms: oneOf([null, 330_000, 680_000, 1e6, 2.2e6]),
  });
  const part = thresholdTurned(
    0.5,
    position === 'top' ? { topOhms: 2200, bottomOhms: 1000 } : { topOhms: 4700 },
  );
  const lit = byRatio(80, 1500);
  const contrast = byRatio(2, 8);
  const [litB, contrastB] = [lit * byRatio(0.8, 1.25), contrast * byRatio(0.9, 1.1)];
  const lamp = oneOf(LAMPS);
  return {
    design: designWith({
      A: voice(),
      B: voice(),
      threshold: { arrangement: oneOf(['shared', 'each'] as const), trimmers: pairOf(() => part) },
    }),
    extremes: levels(lit, lit / contrast, litB, litB / contrastB),
    disturbance: { ripple: lamp === null ? null : lampRipple(lamp, oneOf([50, 60] as const)), noiseVolts: 0 },
  };
}
