/** Two voices side by side: whether they are near enough to lock, and the beats of their nearest simple ratio. */

import { type Astable, cycleOf } from '../circuit/astable.ts';
import { type Lock, lockBetween, nearestRatio } from '../circuit/warnings-pitch.ts';
import { type Hertz, type Pair, pairOf } from '../quantity/units.ts';
import type { Chip } from './timing.ts';

export interface Together {
  /** Null = far enough apart, to first order. */
  readonly lock: Lock | null;
  /** Upper to lower, of the simple ratio nearest to the interval. */
  readonly ratio: readonly [number, number];
  /** How far the interval lies from that ratio, cents, + = wider. */
  readonly apartCents: number;
  /** Beats a second of the two partials that the ratio brings together. */
  readonly beatHertz: Hertz;
}

/** Both voices running. */
export function together(
  { dipVolts, controlVolts }: Pick<Chip, 'dipVolts' | 'controlVolts'>,
  astables: Pair<Astable>,
): Together {
  const hertz = pairOf((voice) => cycleOf(astables[voice]).frequency);
  const [lower, upper] = hertz.A < hertz.B ? [hertz.A, hertz.B] : [hertz.B, hertz.A];
  const { ratio, apartCents } = nearestRatio(upper / lower);
  return {
    lock: lockBetween(dipVolts, controlVolts, astables),
    ratio,
    apartCents,
    beatHertz: Math.abs(ratio[1] * upper - ratio[0] * lower),
  };
}
