/**
 * Whether a gate needs hysteresis against its lamp and its noise, which resistor gives it, and what that costs in
 * light. Calm = in no steady light does it start anew more than once a minute. Ohms, lux, starts a second.
 */
import { setVoiceValue } from '../design/commands.ts';
import { type Design, thresholdFor } from '../design/design.ts';
import type { Hertz, Lux, Ohms, VoiceId } from '../quantity/units.ts';
import { worstChatter } from './chatter.ts';
import { settingsFor } from './setting.ts';
import { type Disturbance, tripLuxAt } from './trip-lux.ts';

const CALM_HERTZ: Hertz = 1 / 60;

/** Twelve values a decade, IEC 60063, from 10 kΩ to 10 MΩ. */
const E12 = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82];
const RESISTORS: readonly Ohms[] = [
  ...[1e3, 1e4, 1e5].flatMap((decade) => E12.map((step) => step * decade)),
  10e6,
];

export interface HysteresisFacts {
  /** null = none fitted. */
  readonly ohms: Ohms | null;
  /** Slow light without ripple or noise: it starts (or stops) at these. */
  readonly upperLux: Lux;
  readonly lowerLux: Lux;
  /** Upper over lower. */
  readonly ratio: number;
  /** In the worst light between them. */
  readonly chatterHertz: Hertz;
  readonly worstLux: Lux;
}

export type HysteresisAdvice =
  | { readonly kind: 'enough'; readonly now: HysteresisFacts }
  /** The largest resistor that calms it. */
  | { readonly kind: 'fit'; readonly now: HysteresisFacts; readonly fitted: HysteresisFacts }
  /** No resistor calms it and leaves the event's contrast a window. */
  | {
      readonly kind: 'too much ripple';
      readonly now: HysteresisFacts;
      readonly least: HysteresisFacts;
      readonly contrast: number;
    };

/** `contrast` = lit light over shaded; what the hysteresis must stay below. */
export function hysteresisAdvice(
  design: Design,
  voice: VoiceId,
  disturbance: Disturbance,
  contrast: number,
): HysteresisAdvice {
  const factsWith = (ohms: Ohms | null) =>
    hysteresisFacts(setVoiceValue(voice, 'hysteresisOhms', ohms)(design), voice, disturbance);
  const now = hysteresisFacts(design, voice, disturbance);
  if (now.chatterHertz <= CALM_HERTZ) return { kind: 'enough', now };
  // Less resistance, more hysteresis, less chatter: halve the list.
  let calm = -1;
  let [from, to] = [0, RESISTORS.length - 1];
  while (from <= to) {
    const middle = (from + to) >> 1;
    if (factsWith(RESISTORS[middle]!).chatterHertz <= CALM_HERTZ) {
      calm = middle;
      from = middle + 1;
    } else to = middle - 1;
  }
  const least = factsWith(RESISTORS[Math.max(0, calm)]!);
  if (calm < 0 || !(least.ratio < contrast)) return { kind: 'too much ripple', now, least, contrast };
  return { kind: 'fit', now, fitted: least };
}

export function hysteresisFacts(design: Design, voice: VoiceId, disturbance: Disturbance): HysteresisFacts {
  const rotation = thresholdFor(design, voice).trimmer.rotation;
  const { upper, lower } = tripLuxAt(settingsFor(design)[voice], rotation, { ripple: null, noiseVolts: 0 });
  const worst = worstChatter(design, voice, disturbance);
  return {
    ohms: design.voices[voice].hysteresisOhms,
    upperLux: upper,
    lowerLux: lower,
    ratio: upper / lower,
    chatterHertz: worst.hertz,
    worstLux: worst.lux,
  };
}
