/**
 * The settings of a threshold trimmer at which its voices gate rightly through given hours, and where in it to stand.
 * Each demand of the light bounds the rotation from one side, in closed form (`setting.ts`); the recommended place has
 * the same margin, as a ratio of light, to both sides. Rotation 0…1, lux, volts.
 */

import { referenceSource } from '../circuit/gate.ts';
import { railVolts } from '../circuit/supply.ts';
import { type Design, thresholdFor, trimmersOf } from '../design/design.ts';
import type { Ripple } from '../light/ripple.ts';
import { COMPARATORS } from '../parts/comparators.ts';
import { TRIMMERS } from '../parts/trimmers.ts';
import {
  type Fraction,
  type Lux,
  type Pair,
  pairOf,
  VOICES,
  type VoiceId,
  type Volts,
} from '../quantity/units.ts';
import type { EdgeReason } from '../words/room-facts.ts';
import type { HourLevels } from './levels.ts';
import { type ConductanceBand, rippledBand } from './ripple-band.ts';
import { highest, zeroOf } from './seek.ts';
import {
  commonModeRotation,
  settingsFor,
  testPointVolts,
  tippingRotations,
  type VoiceSetting,
} from './setting.ts';
import { type Disturbance, demandsOf, questionOf, type TripLux, tripLuxAt } from './trip-lux.ts';

export interface Edge {
  readonly rotation: Fraction;
  /** The wiper, unloaded. */
  readonly volts: Volts;
  readonly reason: EdgeReason;
}

/** The least lit and the most shaded light a voice meets in the hours asked for, and when; null = at every hour alike. */
export interface Extremes {
  readonly lit: { readonly lux: Lux; readonly hour: number | null };
  readonly shade: { readonly lux: Lux; readonly hour: number | null };
}

export interface SettingWindow {
  /** A's, also when it is shared. */
  readonly trimmer: VoiceId;
  readonly voices: readonly VoiceId[];
  /** Where low is not below high there is no window; the edges still say what stands against it. */
  readonly low: Edge;
  readonly high: Edge;
  readonly isEmpty: boolean;
}

export interface Recommended {
  readonly rotation: Fraction;
  /** Turns from the stop at 0, and how many the part has. */
  readonly turns: number;
  readonly turnsOfPart: number;
  /** At the test point, all voices of the trimmer lit; and the wiper unloaded. */
  readonly testPointVolts: Volts;
  readonly volts: Volts;
  /** Lit light over the light needed, and the most shade allowed over the shade there is: above 1 = right. */
  readonly litMargin: number;
  readonly shadeMargin: number;
  /** Distance of the node from tipping back, in peak swings of the lamp's ripple; null = no ripple. */
  readonly rippleMargin: number | null;
  readonly trips: Pair<TripLux>;
}

export type WindowAnswer =
  | { readonly kind: 'window'; readonly window: SettingWindow; readonly recommended: Recommended }
  /** No setting will do: what bounds it, and the setting that comes nearest. */
  | { readonly kind: 'none'; readonly window: SettingWindow; readonly nearest: Recommended };

/** Extremes of the hours given: the darkest end of lit light, the brightest end of shade. At least one hour. */
export function extremesOf(hours: readonly HourLevels[]): Pair<Extremes> {
  return pairOf((voice) => {
    let lit = { lux: Number.POSITIVE_INFINITY, hour: 0 };
    let shade = { lux: 0, hour: 0 };
    let most = 0;
    let least = Number.POSITIVE_INFINITY;
    for (const level of hours) {
      if (!level.known) continue;
      const { low, high } = level.lit[voice];
      const shadeLux = high * level.shadeShare[voice];
      if (low < lit.lux) lit = { lux: low, hour: level.hour };
      if (shadeLux >= shade.lux) shade = { lux: shadeLux, hour: level.hour };
      most = Math.max(most, low);
      least = Math.min(least, shadeLux);
    }
    return {
      lit: most > lit.lux ? lit : { ...lit, hour: null },
      shade: least < shade.lux ? shade : { ...shade, hour: null },
    };
  });
}

/** No hour is brighter or darker than another. */
export const isAlikeAllDay = (extremes: Pair<Extremes>): boolean =>
  VOICES.every((voice) => extremes[voice].lit.hour === null && extremes[voice].shade.hour === null);

/** Windows of all trimmers of a design (one when it is shared). */
export function windowsFor(
  design: Design,
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
  offsets?: Pair<Volts>,
): readonly WindowAnswer[] {
  const settings = settingsFor(design, offsets);
  return trimmersOf(design).map((trimmer) => {
    const voices = voicesOn(design, trimmer);
    const window = windowOf(design, trimmer, voices, settings, extremes, disturbance);
    const rotation = window.isEmpty
      ? nearestIn(settings, voices, extremes, disturbance)
      : bestIn(settings, voices, extremes, disturbance, window.low.rotation, window.high.rotation);
    const recommended = recommendedAt(design, trimmer, rotation, extremes, disturbance, settings);
    return window.isEmpty
      ? { kind: 'none', window, nearest: recommended }
      : { kind: 'window', window, recommended };
  });
}

/** The voices a trimmer sets. */
export function voicesOn(design: Design, trimmer: VoiceId): readonly VoiceId[] {
  return design.threshold.arrangement === 'shared' ? VOICES : [trimmer];
}

/** The bounds of the rotation for these voices on one trimmer. */
export function windowOf(
  design: Design,
  trimmer: VoiceId,
  voices: readonly VoiceId[],
  settings: Pair<VoiceSetting>,
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
  bandFor: BandReader = exactBand,
): SettingWindow {
  const part = thresholdFor(design, trimmer);
  const rail = railVolts(design.supply);
  const edge = (rotation: Fraction, reason: EdgeReason): Edge => {
    const turned = { ...part, trimmer: { ...part.trimmer, rotation } };
    return { rotation, volts: referenceSource(turned, rail).volts, reason };
  };
  let low = edge(0, { kind: 'end stop' });
  let high = edge(1, { kind: 'end stop' });
  for (const voice of voices) {
    const setting = settings[voice];
    const inRange = commonModeRotation(setting);
    if (inRange < high.rotation) {
      const limitVolts = rail - COMPARATORS[design.comparator].headroomVolts;
      high = edge(inRange, { kind: 'common-mode range', limitVolts });
    }
    for (const level of ['lit', 'shade'] as const) {
      const { lux, hour } = extremes[voice][level];
      const reason: EdgeReason = { kind: level, voice, lux, hour };
      const band = bandFor(setting, level, lux, disturbance.ripple);
      const places = boundsFor(setting, level, band, disturbance.noiseVolts);
      // A higher reference asks a rising node for more light, a falling one for less.
      if (setting.nodeRises === (level === 'lit')) {
        const place = Math.min(...places);
        if (place < high.rotation) high = edge(place, reason);
      } else {
        const place = Math.max(...places);
        if (place > low.rotation) low = edge(place, reason);
      }
    }
  }
  return { trimmer, voices, low, high, isEmpty: !(low.rotation < high.rotation) };
}

/** Reads the settled band of a cell's conductance; a batch reads it from a table. */
export type BandReader = (
  setting: VoiceSetting,
  level: 'lit' | 'shade',
  lux: Lux,
  ripple: Ripple | null,
) => ConductanceBand;

const exactBand: BandReader = ({ speed }, _level, lux, ripple) => rippledBand(speed, lux, ripple);

function boundsFor(
  setting: VoiceSetting,
  level: 'lit' | 'shade',
  band: ConductanceBand,
  noiseVolts: Volts,
): readonly Fraction[] {
  return demandsOf(setting, level, noiseVolts).flatMap((demand) =>
    tippingRotations(setting, questionOf(setting, demand, band)),
  );
}

interface Margins {
  readonly lit: number;
  readonly shade: number;
}

function marginsAt(
  settings: Pair<VoiceSetting>,
  voices: readonly VoiceId[],
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
  rotation: Fraction,
): Margins {
  let lit = Number.POSITIVE_INFINITY;
  let shade = Number.POSITIVE_INFINITY;
  for (const voice of voices) {
    const { upper, lower } = tripLuxAt(settings[voice], rotation, disturbance);
    lit = Math.min(lit, ratio(extremes[voice].lit.lux, upper));
    shade = Math.min(shade, ratio(lower, extremes[voice].shade.lux));
  }
  return { lit, shade };
}

/** 0/0 is no margin, and Infinity/Infinity neither. */
function ratio(over: number, under: number): number {
  const value = over / under;
  return Number.isNaN(value) ? 0 : value;
}

/** Equal margins both ways: halved by Illinois' rule where one grows as the other shrinks, else the best by golden section. */
function bestIn(
  settings: Pair<VoiceSetting>,
  voices: readonly VoiceId[],
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
  low: Fraction,
  high: Fraction,
): Fraction {
  const at = (rotation: Fraction) => marginsAt(settings, voices, extremes, disturbance, rotation);
  const sameWay = voices.every((voice) => settings[voice].nodeRises === settings[voices[0]!].nodeRises);
  if (!sameWay) return highest((rotation) => leastOf(at(rotation)), low, high);
  const lean = (rotation: Fraction): number => {
    const { lit, shade } = at(rotation);
    return bounded(Math.log(lit)) - bounded(Math.log(shade));
  };
  return zeroOf(lean, low, high);
}

/** Where no place is right, the one whose worst margin is least bad. */
function nearestIn(
  settings: Pair<VoiceSetting>,
  voices: readonly VoiceId[],
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
): Fraction {
  const most = Math.max(0, Math.min(1, ...voices.map((voice) => commonModeRotation(settings[voice]))));
  return bestIn(settings, voices, extremes, disturbance, 0, most);
}

const leastOf = ({ lit, shade }: Margins): number => Math.min(lit, shade);
const bounded = (value: number): number => Math.min(40, Math.max(-40, value));

/** Everything there is to say of one rotation of a trimmer, right or not. */
export function recommendedAt(
  design: Design,
  trimmer: VoiceId,
  rotation: Fraction,
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
  settings: Pair<VoiceSetting> = settingsFor(design),
): Recommended {
  const voices = voicesOn(design, trimmer);
  const part = thresholdFor(design, trimmer);
  const turned = { ...part, trimmer: { ...part.trimmer, rotation } };
  const { lit, shade } = marginsAt(settings, voices, extremes, disturbance, rotation);
  const { turns } = TRIMMERS[part.trimmer.part];
  return {
    rotation,
    turns: rotation * turns,
    turnsOfPart: turns,
    testPointVolts: testPointVolts(
      design,
      trimmer,
      rotation,
      pairOf((voice) => design.voices[voice].polarity === 'light'),
    ),
    volts: referenceSource(turned, railVolts(design.supply)).volts,
    litMargin: lit,
    shadeMargin: shade,
    rippleMargin: rippleMargin(settings, voices, extremes, disturbance, rotation),
    trips: pairOf((voice) => tripLuxAt(settings[voice], rotation, disturbance)),
  };
}

/**
 * In lit light at its least: how far the mean conductance stands from the one that tips the voice back, over how far
 * the ripple takes it that way. Above 1 the ripple never tips it back.
 */
function rippleMargin(
  settings: Pair<VoiceSetting>,
  voices: readonly VoiceId[],
  extremes: Pair<Extremes>,
  { ripple, noiseVolts }: Disturbance,
  rotation: Fraction,
): number | null {
  if (ripple === null) return null;
  let least = Number.POSITIVE_INFINITY;
  for (const voice of voices) {
    const setting = settings[voice];
    const smooth = tripLuxAt(setting, rotation, { ripple: null, noiseVolts });
    for (const [level, trip] of [
      ['lit', smooth.upper],
      ['shade', smooth.lower],
    ] as const) {
      const { lux } = extremes[voice][level];
      const { low, high } = rippledBand(setting.speed, lux, ripple);
      const { gamma } = setting.speed;
      const [still, tipping] = [(lux / 10) ** gamma, (trip / 10) ** gamma];
      const [away, swing] =
        level === 'lit' ? [still - tipping, still - low] : [tipping - still, high - still];
      least = Math.min(least, swing > 0 ? away / swing : Number.POSITIVE_INFINITY);
    }
  }
  return least;
}

/** Whether one trimmer can serve both sensors, and what each alone would have. */
export interface SharedVerdict {
  readonly canShare: boolean;
  /** Part of the travel that suits both; below 0 = how far the two windows stand apart. */
  readonly overlap: Fraction;
  readonly each: Pair<SettingWindow>;
}

/** Holds both voices against trimmer A, as if it were shared. */
export function sharedVerdict(
  design: Design,
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
): SharedVerdict {
  const shared: Design = { ...design, threshold: { ...design.threshold, arrangement: 'shared' } };
  const settings = settingsFor(shared);
  const each = pairOf((voice) => windowOf(shared, 'A', [voice], settings, extremes, disturbance));
  const overlap =
    Math.min(each.A.high.rotation, each.B.high.rotation) - Math.max(each.A.low.rotation, each.B.low.rotation);
  return { canShare: overlap > 0, overlap, each };
}
