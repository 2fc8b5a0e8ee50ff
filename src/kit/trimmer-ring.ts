/**
 * What is printed around a trimmer of one board, at its turn: the notes that its voice reaches and cents between
 * them, or the volts that a threshold reaches; and where it stands now. Angles follow from the travel on the maker's
 * sheet, the wiper's path taken as straight. SI units; turns 0…1 from the anticlockwise end of the electrical travel.
 */
import { astableOf, cycleOf } from '../circuit/astable.ts';
import { referenceSource, rotationForVolts } from '../circuit/gate.ts';
import type { Design, Trimmer } from '../design/design.ts';
import { TRIMMERS, type TrimmerId } from '../parts/trimmers.ts';
import { frequencyOfNote, nameOfNote, noteNumberOf } from '../plan/notes.ts';
import { formatFixed } from '../quantity/format.ts';
import type { Fraction, Hertz, VoiceId, Volts } from '../quantity/units.ts';
import { rotationFor } from './rotation.ts';

/** 0: named first where names are crowded; 1: named where there is room; 2: the middle between two; 3: the finest. */
export type Rank = 0 | 1 | 2 | 3;

export interface RingTick {
  readonly rotation: Fraction;
  /** Clockwise from the middle of the travel. */
  readonly degrees: number;
  readonly rank: Rank;
  /** English name of a note, or volts; null = a tick between named ones. */
  readonly name: string | null;
}

export interface TrimmerRing {
  readonly of: 'pitch' | 'threshold';
  /** Null = serves both voices. */
  readonly voice: VoiceId | null;
  readonly part: TrimmerId;
  readonly turns: number;
  /** Electrical travel, where the ticks lie; and from stop to stop of the screw, which reaches a little further. */
  readonly degrees: number;
  readonly stopDegrees: number;
  readonly ticks: readonly RingTick[];
  /** Where the design has it. */
  readonly now: { readonly rotation: Fraction; readonly degrees: number };
}

/** Steps a semitone is shared in, finest first, cents; each divides 50. */
const CENTS = [5, 10, 25, 50] as const;
/** Steps of a reference, volts. */
const VOLTS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1] as const;
const NATURAL: ReadonlySet<number> = new Set([0, 2, 4, 5, 7, 9, 11]);

/** `leastDegrees`: nearer than that two ticks are not drawn. Null when the voice does not run. */
export function pitchRing(
  design: Design,
  voice: VoiceId,
  railVolts: Volts,
  a4: Hertz,
  leastDegrees: number,
): TrimmerRing | null {
  const { trimmer } = design.voices[voice];
  const at = (rotation: Fraction): Hertz => cycleOf(astableOf(design, voice, railVolts, rotation)).frequency;
  const [high, low] = [at(0), at(1)];
  if (!(high > low && low > 0)) return null;
  const { degrees } = TRIMMERS[trimmer.part];
  const turnOf = (note: number): Fraction | null =>
    rotationFor(design, voice, railVolts, frequencyOfNote(note, a4));
  const ticks: RingTick[] = [];
  const add = (note: number, rank: Rank, name: string | null): void => {
    const rotation = turnOf(note);
    if (rotation !== null) ticks.push({ rotation, degrees: (rotation - 0.5) * degrees, rank, name });
  };
  const [first, last] = [noteNumberOf(low, a4), noteNumberOf(high, a4)];
  for (let note = Math.floor(first); note <= last; note++) {
    add(note, NATURAL.has(((note % 12) + 12) % 12) ? 0 : 1, nameOfNote(note));
    // The semitone above, in the finest step whose ticks stay apart where they lie nearest: at its upper end.
    const to = Math.min(last, note + 1);
    const step = CENTS.find((cents) => {
      const from = Math.max(first, to - cents / 100);
      const [here, there] = [turnOf(from), turnOf(to)];
      return (
        here !== null &&
        there !== null &&
        (here - there) * degrees >= leastDegrees * (to - from) * (100 / cents)
      );
    });
    if (step === undefined) continue;
    for (let cents: number = step; cents < 100; cents += step)
      add(note + cents / 100, cents === 50 ? 2 : 3, null);
  }
  return { of: 'pitch', voice, ...travelOf(trimmer), ticks };
}

/** The trimmer of a threshold, in volts at its wiper, unloaded. */
export function thresholdRing(
  design: Design,
  id: VoiceId,
  railVolts: Volts,
  leastDegrees: number,
): TrimmerRing {
  const part = design.threshold.trimmers[id];
  const { trimmer } = part;
  const { degrees } = TRIMMERS[trimmer.part];
  const voltsAt = (rotation: Fraction): Volts =>
    referenceSource({ ...part, trimmer: { ...trimmer, rotation } }, railVolts).volts;
  const [low, high] = [voltsAt(0), voltsAt(1)];
  const perVolt = degrees / (high - low);
  const step = VOLTS.find((volts) => volts * perVolt >= leastDegrees) ?? 1;
  const ticks: RingTick[] = [];
  for (let i = Math.ceil(low / step - 1e-9); i * step <= high + 1e-9; i++) {
    const volts = i * step;
    const rotation = Math.min(1, Math.max(0, rotationForVolts(part, railVolts, volts)));
    const isWhole = (share: number): boolean => Math.abs(volts / share - Math.round(volts / share)) < 1e-6;
    const rank: Rank = isWhole(1) ? 0 : isWhole(0.5) ? 1 : isWhole(0.1) ? 2 : 3;
    ticks.push({
      rotation,
      degrees: (rotation - 0.5) * degrees,
      rank,
      name: rank < 3 ? formatFixed(volts, 1) : null,
    });
  }
  return {
    of: 'threshold',
    voice: design.threshold.arrangement === 'shared' ? null : id,
    ...travelOf(trimmer),
    ticks,
  };
}

function travelOf({ part, rotation }: Trimmer) {
  const { turns, degrees, stopDegrees } = TRIMMERS[part];
  return { part, turns, degrees, stopDegrees, now: { rotation, degrees: (rotation - 0.5) * degrees } };
}
