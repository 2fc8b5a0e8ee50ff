/**
 * A voice's period as a straight line of RB, which is what a search can turn round: T = C·(own + factor·RB). The two
 * coefficients come from the circuit's own astable (`circuit/astable.ts`), so both agree to rounding. SI units.
 */
import { type Astable, astableFrom } from '../circuit/astable.ts';
import { railVolts } from '../circuit/supply.ts';
import { dipVolts } from '../circuit/warnings-pitch.ts';
import type { Design, Supply } from '../design/design.ts';
import type { Candidate, Target, VoiceParts } from '../design/pitch.ts';
import { TIMERS, type TimerId } from '../parts/timers.ts';
import { endOhms, TRIMMERS } from '../parts/trimmers.ts';
import {
  type Fraction,
  type Hertz,
  type Ohms,
  type Pair,
  pairOf,
  type VoiceId,
  type Volts,
} from '../quantity/units.ts';

/** What stands around the timing parts, as plain data: the timer, its rail, and what is forced on its control pins. */
export interface Chip {
  readonly timer: TimerId;
  readonly supply: Supply;
  readonly railVolts: Volts;
  readonly controlVolts: Pair<Volts | null>;
  /** Dip of the shared rail at each output edge. */
  readonly dipVolts: Volts;
}

export function chipOf(design: Design): Chip {
  const rail = railVolts(design.supply);
  return {
    timer: design.timer,
    supply: design.supply,
    railVolts: rail,
    controlVolts: pairOf((voice) => design.voices[voice].controlVolts),
    dipVolts: dipVolts(design, rail),
  };
}

/** T = C·(ownOhms + factor·RB); the high part of it is C·highFactor·(RA + RB). */
export interface TimingLaw {
  readonly ownOhms: Ohms;
  readonly factor: number;
  readonly highFactor: number;
}

/** One voice of a candidate at a turn of its trimmer, for whatever asks the circuit itself. */
export function astableAt(chip: Chip, voice: VoiceId, parts: VoiceParts, rotation: Fraction): Astable {
  return astableFrom({
    raOhms: parts.ra.ohms,
    rbOhms: rbAt(parts, rotation),
    farads: parts.capacitor.farads,
    railVolts: chip.railVolts,
    controlVolts: chip.controlVolts[voice],
    discharge: TIMERS[chip.timer].discharge,
  });
}

/** The law for one RA; null when the capacitor never reaches both levels. */
export function lawOf(chip: Chip, controlVolts: Volts | null, raOhms: Ohms): TimingLaw | null {
  const { discharge } = TIMERS[chip.timer];
  const a = astableFrom({ raOhms, rbOhms: 0, farads: 1, railVolts: chip.railVolts, controlVolts, discharge });
  const high = Math.log((a.chargeVolts - a.lowerVolts) / (a.chargeVolts - a.upperVolts));
  const low = Math.log((a.upperVolts - a.sinkVolts) / (a.lowerVolts - a.sinkVolts));
  if (!(high > 0 && low > 0 && Number.isFinite(high + low))) return null;
  return { ownOhms: raOhms * high + a.sinkOhms * low, factor: high + low, highFactor: high };
}

/** RB for a frequency; below 0 when RA alone is already too slow. */
export function rbFor(law: TimingLaw, farads: number, hertz: Hertz): Ohms {
  return (1 / (hertz * farads) - law.ownOhms) / law.factor;
}

/** RB at a rotation. */
export function rbAt({ rbFixed, trimmer }: VoiceParts, rotation: Fraction): Ohms {
  const end = endOhms(trimmer.part, trimmer.ohms);
  return rbFixed.ohms + end + rotation * (trimmer.ohms - end);
}

/** Rotation at which RB has a value; outside 0…1 when the trimmer does not go there. */
export function rotationFor({ rbFixed, trimmer }: VoiceParts, rb: Ohms): number {
  const end = endOhms(trimmer.part, trimmer.ohms);
  return (rb - rbFixed.ohms - end) / (trimmer.ohms - end);
}

export function hertzAt(law: TimingLaw, parts: VoiceParts, rotation: Fraction): Hertz {
  return 1 / (parts.capacitor.farads * (law.ownOhms + law.factor * rbAt(parts, rotation)));
}

/** Share of the period the output is high, at an RB. */
export function dutyAt(law: TimingLaw, raOhms: Ohms, rb: Ohms): Fraction {
  return (law.highFactor * (raOhms + rb)) / (law.ownOhms + law.factor * rb);
}

/** One place on the way of a trimmer: pitch, and how steeply it falls there. */
export interface CurvePoint {
  readonly rotation: Fraction;
  readonly hertz: Hertz;
  /** Cents down for one degree of turn more. */
  readonly centsPerDegree: number;
  /** Cents by which a hand may miss, either way: what the maker promises of the trimmer's setting. */
  readonly missCents: number;
}

const CENTS = 1200 / Math.LN2;

export function curvePoint(law: TimingLaw, parts: VoiceParts, rotation: Fraction): CurvePoint {
  const { part, ohms } = parts.trimmer;
  const { degrees, settable } = TRIMMERS[part];
  const sum = law.ownOhms + law.factor * rbAt(parts, rotation);
  const perOhm = (CENTS * law.factor) / sum;
  return {
    rotation,
    hertz: 1 / (parts.capacitor.farads * sum),
    centsPerDegree: (perOhm * (ohms - endOhms(part, ohms))) / degrees,
    missCents: perOhm * settable.rheostat * ohms,
  };
}

/** The way of a trimmer from stop to stop in equal steps; empty where the voice never runs. */
export function trimmerCurve(
  chip: Chip,
  controlVolts: Volts | null,
  parts: VoiceParts,
  points = 61,
): readonly CurvePoint[] {
  const law = lawOf(chip, controlVolts, parts.ra.ohms);
  if (law === null) return [];
  return Array.from({ length: points }, (_, i) => curvePoint(law, parts, i / (points - 1)));
}

/** The middle of a target by ratio: the note itself, where it is one. */
export function middleHertz({ lowHertz, highHertz }: Target): Hertz {
  return Math.sqrt(lowHertz * highHertz);
}

/** Where the trimmers stand for a candidate's targets with nominal parts, held within their travel. */
export function targetRotations(chip: Chip, { parts, targets }: Candidate): Pair<Fraction> {
  return pairOf((voice) => {
    const law = lawOf(chip, chip.controlVolts[voice], parts[voice].ra.ohms);
    if (law === null) return 0.5;
    const rb = rbFor(law, parts[voice].capacitor.farads, middleHertz(targets[voice]));
    return Math.min(1, Math.max(0, rotationFor(parts[voice], rb)));
  });
}
