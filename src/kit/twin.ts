/**
 * The twin of one built board: from the pitches at both ends of a pitch trimmer, its capacitor and its trimmer; from
 * the light at which a voice has just switched on and the reference then, its cell's resistance at 10 lx. RA and the
 * fixed part of RB are known to 1 %; the timer's own error goes with the capacitor. SI units.
 *
 * The period is C times a function of RA, RB and the levels. RB at one end is RBf + e(P), at the other RBf + P, with
 * e the end resistance; the ratio of the two periods gives P, then either period gives C.
 */
import { astableFrom, cycleOf } from '../circuit/astable.ts';
import { gatesOf, rotationForVolts } from '../circuit/gate.ts';
import { type Design, thresholdFor, type Voice } from '../design/design.ts';
import { CELLS } from '../parts/cells.ts';
import { TIMERS } from '../parts/timers.ts';
import { endOhms } from '../parts/trimmers.ts';
import type { Farads, Fraction, Hertz, Lux, Ohms, Seconds, VoiceId, Volts } from '../quantity/units.ts';

/** A value and one standard uncertainty of it, as a share. */
export interface Inferred<T extends number> {
  readonly value: T;
  readonly uncertainty: Fraction;
}

export type PitchTwin =
  | { readonly kind: 'twin'; readonly farads: Inferred<Farads>; readonly trimmerOhms: Inferred<Ohms> }
  /** The two pitches cannot come from this trimmer. */
  | { readonly kind: 'impossible'; readonly why: 'ends exchanged' | 'range too small' | 'range too large' };

export type CellTwin =
  | { readonly kind: 'twin'; readonly r10Ohms: Inferred<Ohms> }
  | { readonly kind: 'impossible'; readonly why: 'no light' | 'reference out of reach' | 'never trips' };

/** Metal film, as a standard deviation of an even spread. */
const RESISTOR = 0.01 / Math.sqrt(3);
/** A pitch read off the recording. */
const PITCH = 0.0006;
/** What is left at a trimmer's stop: from none to the sheet's limit. */
const END_SHARE = 1 / Math.sqrt(12);
/** A lux meter and a reference read with a meter. */
const LUX = 0.05;
const REFERENCE = 0.01;
/** Trimmers come within a factor of two of their name, or they are another part. */
const WIDEST = 2;

function periodOf(design: Design, v: Voice, railVolts: Volts, rb: Ohms, farads: Farads): Seconds {
  const { frequency } = cycleOf(
    astableFrom({
      raOhms: v.raOhms,
      rbOhms: rb,
      farads,
      railVolts,
      controlVolts: v.controlVolts,
      discharge: TIMERS[design.timer].discharge,
    }),
  );
  return 1 / frequency;
}

/** Capacitor and trimmer from the pitches with the trimmer at its two ends. */
export function pitchTwin(
  design: Design,
  voice: VoiceId,
  railVolts: Volts,
  ends: { readonly high: Hertz; readonly low: Hertz },
): PitchTwin {
  if (!(ends.high > ends.low)) return { kind: 'impossible', why: 'ends exchanged' };
  const v = design.voices[voice];
  const solved = solveTwin(design, v, railVolts, ends, 1);
  if (typeof solved === 'string') return { kind: 'impossible', why: solved };
  // Each unknown in turn by its deviation; the squares add.
  const changed = [
    solveTwin(design, { ...v, raOhms: v.raOhms * (1 + RESISTOR) }, railVolts, ends, 1),
    solveTwin(design, { ...v, rbFixedOhms: v.rbFixedOhms * (1 + RESISTOR) }, railVolts, ends, 1),
    solveTwin(design, v, railVolts, { ...ends, high: ends.high * (1 + PITCH) }, 1),
    solveTwin(design, v, railVolts, { ...ends, low: ends.low * (1 + PITCH) }, 1),
    solveTwin(design, v, railVolts, ends, 1 - END_SHARE),
  ];
  const spread = (of: (s: Solved) => number): Fraction =>
    Math.hypot(...changed.map((other) => (typeof other === 'string' ? 0 : of(other) / of(solved) - 1)));
  return {
    kind: 'twin',
    farads: { value: solved.farads, uncertainty: spread((s) => s.farads) },
    trimmerOhms: { value: solved.trimmerOhms, uncertainty: spread((s) => s.trimmerOhms) },
  };
}

interface Solved {
  readonly farads: Farads;
  readonly trimmerOhms: Ohms;
}

function solveTwin(
  design: Design,
  v: Voice,
  railVolts: Volts,
  ends: { readonly high: Hertz; readonly low: Hertz },
  endShare: Fraction,
): Solved | 'range too small' | 'range too large' {
  const endOf = (ohms: Ohms): Ohms => endShare * endOhms(v.trimmer.part, ohms);
  const ratioOf = (ohms: Ohms): number =>
    periodOf(design, v, railVolts, v.rbFixedOhms + ohms, 1e-7) /
    periodOf(design, v, railVolts, v.rbFixedOhms + endOf(ohms), 1e-7);
  const wanted = ends.high / ends.low;
  let [least, most] = [v.trimmer.ohms / WIDEST, v.trimmer.ohms * WIDEST];
  if (ratioOf(least) > wanted) return 'range too small';
  if (ratioOf(most) < wanted) return 'range too large';
  for (let i = 0; i < 60; i++) {
    const middle = Math.sqrt(least * most);
    if (ratioOf(middle) < wanted) least = middle;
    else most = middle;
  }
  const trimmerOhms = Math.sqrt(least * most);
  const unit = periodOf(design, v, railVolts, v.rbFixedOhms + trimmerOhms, 1e-7);
  return { farads: 1e-7 / (unit * ends.low), trimmerOhms };
}

/**
 * The cell's R at 10 lx, from the steady light in which the voice has just switched on and the reference at TP3. The
 * slope is the family's: near 10 lx it hardly matters, and how much it does is in the uncertainty.
 */
export function cellTwin(
  design: Design,
  voice: VoiceId,
  railVolts: Volts,
  justOn: { readonly lux: Lux; readonly referenceVolts: Volts },
): CellTwin {
  if (!(justOn.lux > 0)) return { kind: 'impossible', why: 'no light' };
  const v = design.voices[voice];
  const at = (changed: {
    readonly lux?: number;
    readonly volts?: number;
    readonly gamma?: number;
    readonly fixed?: number;
  }): Ohms | null => {
    const ohms = tripOhms(
      design,
      voice,
      railVolts,
      justOn.referenceVolts * (changed.volts ?? 1),
      changed.fixed ?? 1,
    );
    return ohms === null
      ? null
      : ohms * ((justOn.lux * (changed.lux ?? 1)) / 10) ** (v.cell.gamma + (changed.gamma ?? 0));
  };
  const part = thresholdFor(design, voice);
  const rotation = rotationForVolts(part, railVolts, justOn.referenceVolts);
  if (!(rotation > -0.1 && rotation < 1.1)) return { kind: 'impossible', why: 'reference out of reach' };
  const value = at({});
  if (value === null) return { kind: 'impossible', why: 'never trips' };
  const { spread } = CELLS[v.cell.family].gamma;
  const others = [
    at({ lux: 1 + LUX }),
    at({ volts: 1 + REFERENCE }),
    at({ fixed: 1 + RESISTOR }),
    at({ gamma: spread / Math.sqrt(3) }),
  ];
  const uncertainty = Math.hypot(...others.map((other) => (other === null ? 0 : other / value - 1)));
  return { kind: 'twin', r10Ohms: { value, uncertainty } };
}

/** The cell's resistance at which a silent voice switches on; null = at none. */
function tripOhms(
  design: Design,
  voice: VoiceId,
  railVolts: Volts,
  referenceVolts: Volts,
  fixedRatio: number,
): Ohms | null {
  const which = design.threshold.arrangement === 'shared' ? 'A' : voice;
  const part = design.threshold.trimmers[which];
  const v = design.voices[voice];
  const rotation = rotationForVolts(part, railVolts, referenceVolts);
  const trimmers = {
    ...design.threshold.trimmers,
    [which]: { ...part, trimmer: { ...part.trimmer, rotation } },
  };
  const divider = { ...v.divider, fixedOhms: v.divider.fixedOhms * fixedRatio };
  const set: Design = {
    ...design,
    voices: { ...design.voices, [voice]: { ...v, divider } },
    threshold: { ...design.threshold, trimmers },
  };
  const state = gatesOf(set, railVolts)[voice].states[0]!;
  const siemens = (state.n0 - state.tripVolts * state.d0) / (state.tripVolts - state.n1);
  return siemens > 0 && Number.isFinite(siemens) ? 1 / siemens : null;
}

export interface BoardTwin {
  readonly farads?: Farads;
  readonly trimmerOhms?: Ohms;
  readonly r10Ohms?: Ohms;
}

/** The design with one voice's parts as this board has them. */
export function twinOf(design: Design, voice: VoiceId, board: BoardTwin): Design {
  const v = design.voices[voice];
  const twin: Voice = {
    ...v,
    capacitor: { ...v.capacitor, farads: board.farads ?? v.capacitor.farads },
    trimmer: { ...v.trimmer, ohms: board.trimmerOhms ?? v.trimmer.ohms },
    cell: { ...v.cell, r10Ohms: board.r10Ohms ?? v.cell.r10Ohms },
  };
  return { ...design, voices: { ...design.voices, [voice]: twin } };
}
