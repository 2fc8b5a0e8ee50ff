/**
 * What a step waits for, as plain data looked at in the running model: never a click that claims something happened.
 * A watch is met once and stays met; `in turn` remembers how far it has come. Volts, lux.
 */

import { thresholdFor } from '../design/design.ts';
import { type Fraction, type Lux, type Pair, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';
import { type Bench, instrumentOn } from './bench.ts';
import { type ControlId, settingOf } from './controls.ts';
import { type Figure, figureValue } from './figures.ts';
import { isUntouched } from './touched.ts';

export type Condition =
  | { readonly kind: 'sounding' | 'silent' | 'chattering' | 'steady'; readonly voice: VoiceId }
  | { readonly kind: 'node above reference' | 'node below reference'; readonly voice: VoiceId }
  | {
      readonly kind: 'rotation between';
      readonly trimmer: 'threshold' | 'pitch A' | 'pitch B';
      readonly least: Fraction;
      readonly most: Fraction;
    }
  /** A figure within limits, null = none on that side. */
  | {
      readonly kind: 'between';
      readonly figure: Figure;
      readonly least: number | null;
      readonly most: number | null;
    }
  | { readonly kind: 'changed'; readonly what: ControlId }
  | { readonly kind: 'all' | 'any'; readonly of: readonly Condition[] };

export type Watch = Condition | { readonly kind: 'in turn'; readonly of: readonly Condition[] };

/** What is looked at: the model as it runs. A live frame of the page has these and more. */
export interface Seen {
  readonly lux: Pair<Lux>;
  readonly node: Pair<Volts>;
  readonly sounding: Pair<boolean>;
  /** As told to the eye: quick changes are told as chatter. */
  readonly shown: Pair<{ readonly kind: 'sounding' | 'silent' | 'chattering' }>;
}

/** The bench as the step set it up, as it is now, and what the model does. */
export interface Situation {
  readonly start: Bench;
  readonly now: Bench;
  readonly seen: Seen;
}

export function holds(condition: Condition, situation: Situation): boolean {
  const { start, now, seen } = situation;
  switch (condition.kind) {
    case 'sounding':
      return seen.shown[condition.voice].kind === 'sounding';
    case 'silent':
      return seen.shown[condition.voice].kind === 'silent';
    case 'chattering':
      return seen.shown[condition.voice].kind === 'chattering';
    case 'steady':
      return seen.shown[condition.voice].kind !== 'chattering';
    case 'node above reference':
      return seen.node[condition.voice] > referenceOf(now, condition.voice);
    case 'node below reference':
      return seen.node[condition.voice] < referenceOf(now, condition.voice);
    case 'rotation between': {
      const rotation = rotationOf(now, condition.trimmer);
      return rotation >= condition.least && rotation <= condition.most;
    }
    case 'between': {
      const { figure, least, most } = condition;
      const value = figureValue(figure, now, seen.lux);
      return value !== null && (least === null || value >= least) && (most === null || value <= most);
    }
    case 'changed':
      return hasChanged(condition.what, start, now);
    case 'all':
      return condition.of.every((each) => holds(each, situation));
    case 'any':
      return condition.of.some((each) => holds(each, situation));
  }
}

function referenceOf(bench: Bench, voice: VoiceId): Volts {
  return instrumentOn(bench).voices[voice].referenceVolts;
}

function rotationOf({ design }: Bench, trimmer: 'threshold' | 'pitch A' | 'pitch B'): Fraction {
  if (trimmer === 'threshold') return thresholdFor(design, 'A').trimmer.rotation;
  return design.voices[trimmer === 'pitch A' ? 'A' : 'B'].trimmer.rotation;
}

function hasChanged(what: ControlId, start: Bench, now: Bench): boolean {
  if (what === 'camera') return now.light.source !== start.light.source;
  if (what === 'just on')
    return VOICES.some(
      (voice) =>
        thresholdFor(now.design, voice).trimmer.rotation !==
        thresholdFor(start.design, voice).trimmer.rotation,
    );
  return !Object.is(settingOf(now, what), settingOf(start, what));
}

/** How far a watch has come. */
export interface Watched {
  /**
   * Something was done, or it has been seen not to be met: what is looked at is this step, and no longer the light of
   * the one before.
   */
  readonly begun: boolean;
  /** Conditions of an `in turn` that have been met so far; of any other watch, 0 or 1. */
  readonly place: number;
  readonly met: boolean;
}

export const UNWATCHED: Watched = { begun: false, place: 0, met: false };

/** The same object when nothing has come of it. */
export function watched(before: Watched, watch: Watch, situation: Situation): Watched {
  if (before.met) return before;
  const conditions = watch.kind === 'in turn' ? watch.of : [watch];
  const next = conditions[before.place];
  if (next === undefined) return before;
  const held = holds(next, situation);
  const begun = before.begun || !held || !isUntouched(situation.start, situation.now);
  if (!held || !begun) return begun === before.begun ? before : { ...before, begun };
  const place = before.place + 1;
  return { begun, place, met: place >= conditions.length };
}
