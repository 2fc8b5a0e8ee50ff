/**
 * The test slip: what the meter should show on this very design, how far off a healthy board may be, and what a
 * typed reading means. Limits: every part at the edge of its tolerance at once, straight in each (worst case of the
 * first order), and the chips' own limits.
 */
import { USUAL_LIT_LUX, USUAL_SHADED_LUX } from '../circuit/power.ts';
import { lastSourceVolts, railVolts } from '../circuit/supply.ts';
import type { Design, Voice } from '../design/design.ts';
import { CELLS } from '../parts/cells.ts';
import { COMPARATORS } from '../parts/comparators.ts';
import { TIMERS } from '../parts/timers.ts';
import { type Amperes, type Fraction, pairOf, VOICES, type VoiceId, type Volts } from '../quantity/units.ts';
import type { SlipPoint, Unit } from '../words/bench.ts';
import { type BenchLight, playsOf, type SlipValue, slipValues } from './slip-values.ts';

export interface SlipRow extends SlipValue {
  readonly key: string;
  readonly least: number;
  readonly most: number;
}

export interface Slip {
  readonly rows: readonly SlipRow[];
  /** The rail all rows are told for. */
  readonly railVolts: Volts;
}

/** Metal film; the order asks for it. */
const RESISTOR: Fraction = 0.01;
/** Beside a digital meter's ± 1 %: its last figures and the leads (common practice). */
const METER: Fraction = 0.01;
const LAST_FIGURE: Readonly<Record<Unit, number>> = { V: 0.02, A: 0.0002, Hz: 0.5 };
/** Current within ± 20 % of the sum of typical figures: makers give the timers' to no better. */
const CURRENT: Fraction = 0.2;
/** High level at little load: from 1.0 to 1.7 V below the rail, bipolar (from memory, around the usual 1.3 V). */
const HIGH_LEVEL: Volts = 0.4;
/** A lux meter and the hand that shades, each way. */
const LIGHT: Fraction = 0.1;
/** Meters read a square wave's AC by its mean, up to a tenth off. */
const AC: Fraction = 0.12;
/** A voice this near its pitch is called tuned: two of them together then beat slowly (common practice). */
const TUNED = 10;
const centsRatio = (cents: number): number => 2 ** (cents / 1200);

export const USUAL_BENCH: BenchLight = { lit: USUAL_LIT_LUX, shaded: USUAL_SHADED_LUX };

type Change = (design: Design) => Design;

/** Pairs of changes, each way, for every part whose tolerance moves a reading. */
function tolerances(): readonly (readonly [Change, Change])[] {
  const inVoice = (voice: VoiceId, change: (v: Voice, sign: 1 | -1) => Voice): readonly [Change, Change] => {
    const by =
      (sign: 1 | -1): Change =>
      (design) => ({
        ...design,
        voices: { ...design.voices, [voice]: change(design.voices[voice], sign) },
      });
    return [by(1), by(-1)];
  };
  const out: (readonly [Change, Change])[] = [];
  for (const voice of VOICES)
    out.push(
      inVoice(voice, (v, s) => ({ ...v, raOhms: v.raOhms * (1 + s * RESISTOR) })),
      inVoice(voice, (v, s) => ({ ...v, rbFixedOhms: v.rbFixedOhms * (1 + s * RESISTOR) })),
      inVoice(voice, (v, s) => ({
        ...v,
        trimmer: { ...v.trimmer, ohms: v.trimmer.ohms * (1 + s * v.trimmer.tolerance) },
      })),
      inVoice(voice, (v, s) => ({
        ...v,
        capacitor: { ...v.capacitor, farads: v.capacitor.farads * (1 + s * v.capacitor.tolerance) },
      })),
      inVoice(voice, (v, s) => {
        const { min, max } = CELLS[v.cell.family].r10Ohms;
        return {
          ...v,
          cell: { ...v.cell, r10Ohms: s > 0 ? Math.max(max, v.cell.r10Ohms) : Math.min(min, v.cell.r10Ohms) },
        };
      }),
      inVoice(voice, (v, s) => {
        const { spread } = CELLS[v.cell.family].gamma;
        return { ...v, cell: { ...v.cell, gamma: v.cell.gamma + s * spread } };
      }),
      inVoice(voice, (v, s) => ({
        ...v,
        divider: { ...v.divider, fixedOhms: v.divider.fixedOhms * (1 + s * RESISTOR) },
      })),
    );
  const threshold = (
    change: (t: Design['threshold']['trimmers']['A'], s: 1 | -1) => Design['threshold']['trimmers']['A'],
  ) => {
    const by =
      (sign: 1 | -1): Change =>
      (design) => ({
        ...design,
        threshold: {
          ...design.threshold,
          trimmers: pairOf((voice) => change(design.threshold.trimmers[voice], sign)),
        },
      });
    out.push([by(1), by(-1)]);
  };
  threshold((t, s) => ({
    ...t,
    trimmer: { ...t.trimmer, ohms: t.trimmer.ohms * (1 + s * t.trimmer.tolerance) },
  }));
  threshold((t, s) => ({ ...t, topOhms: t.topOhms * (1 + s * RESISTOR) }));
  threshold((t, s) => ({ ...t, bottomOhms: t.bottomOhms * (1 + s * RESISTOR) }));
  return out;
}

const keyOf = ({ point, voice, light }: SlipValue): string => `${point} ${voice ?? ''} ${light}`;

/** The slip of a design in a bench's light; for the rail as measured, or null for the supply as designed. */
export function slipOf(design: Design, light: BenchLight = USUAL_BENCH, rail: Volts | null = null): Slip {
  const plays = playsOf(design, light, rail);
  const typical = slipValues(design, light, plays);
  const spread = new Map<string, [number, number]>();
  for (const changes of tolerances()) {
    // In each pair the two directions of one part; only one of them can be true.
    const least = new Map<string, number>();
    const most = new Map<string, number>();
    for (const change of changes)
      for (const value of slipValues(change(design), light, plays)) {
        const key = keyOf(value);
        least.set(key, Math.min(least.get(key) ?? value.value, value.value));
        most.set(key, Math.max(most.get(key) ?? value.value, value.value));
      }
    for (const value of typical) {
      const key = keyOf(value);
      const so = spread.get(key) ?? [0, 0];
      so[0] += Math.max(0, value.value - (least.get(key) ?? value.value));
      so[1] += Math.max(0, (most.get(key) ?? value.value) - value.value);
      spread.set(key, so);
    }
  }
  const brighter = slipValues(
    design,
    { lit: light.lit * (1 + LIGHT), shaded: light.shaded * (1 + LIGHT) },
    plays,
  );
  const byLight = new Map(brighter.map((value) => [keyOf(value), value.value]));
  const railNow = typical.find(({ point }) => point === 'rail')!.value;
  const rows = typical.map((value): SlipRow => {
    const key = keyOf(value);
    const [down, up] = spread.get(key) ?? [0, 0];
    const shift = Math.abs((byLight.get(key) ?? value.value) - value.value);
    return { ...value, key, ...limitsOf(design, value, railNow, down + shift, up + shift) };
  });
  return { rows, railVolts: railNow };
}

function limitsOf(
  design: Design,
  { point, voice, unit, value }: SlipValue,
  rail: Volts,
  down: number,
  up: number,
): { readonly least: number; readonly most: number } {
  const meter = Math.abs(value) * METER + LAST_FIGURE[unit];
  const timer = TIMERS[design.timer];
  const within = (below: number, above: number) => ({
    least: value - below - meter,
    most: value + above + meter,
  });
  switch (point) {
    case 'rail': {
      const { supply } = design;
      const last = lastSourceVolts(supply, design.timer, design.comparator);
      // A new battery stands up to 7 % above its name; below half of its usable volts it is not worth a test.
      const low = railVolts({ ...supply, volts: (supply.volts + last) / 2 });
      return { least: Math.min(low, 0.95 * value), most: 1.07 * railVolts(supply) + meter };
    }
    case 'gate': {
      const { pullUpOhms } = design.voices[voice!];
      const high = value > rail / 2;
      const { worstSaturationOhms } = COMPARATORS[design.comparator];
      const worstHigh = rail - timer.resetHighMostAmperes * pullUpOhms;
      const worstLow = worstSaturationOhms * (rail / pullUpOhms + timer.resetLowMostAmperes);
      return high
        ? { least: Math.min(value, worstHigh) - meter, most: rail + meter }
        : { least: -meter, most: Math.max(value, worstLow) + meter };
    }
    case 'out':
    case 'mix': {
      const share = value / rail;
      return within(down + share * HIGH_LEVEL, up + share * HIGH_LEVEL);
    }
    case 'jack ac':
      return within(down + AC * value, up + AC * value);
    case 'jack dc':
      return within(down, up);
    case 'current':
      return within(down + CURRENT * value, up + CURRENT * value);
    case 'pitch at low end':
    case 'pitch at high end': {
      const own = 2 * timer.accuracy.typical * value;
      return within(down + own, up + own);
    }
    case 'pitch at target':
      // Parts off their values are turned away with the trimmer; whether it reaches, its two stops tell.
      return {
        least: value * centsRatio(-TUNED) - LAST_FIGURE.Hz,
        most: value * centsRatio(TUNED) + LAST_FIGURE.Hz,
      };
    case 'control':
      // The three resistors of a timer match to a few per cent (TI SLFS022: 9 to 11 V at 15 V).
      return within(0.1 * value, 0.1 * value);
    default:
      return within(down, up);
  }
}

export type Judgement =
  | { readonly kind: 'good' }
  | { readonly kind: 'off'; readonly way: 'low' | 'high' }
  /** No board can show this: the reading is asked for again, and kept. */
  | {
      readonly kind: 'impossible';
      readonly why: 'negative' | 'above the supply' | 'not a number' | 'too large';
    };

/** What one reading means. */
export function judge(row: SlipRow, reading: number, supplyVolts: Volts): Judgement {
  const impossible = impossibleAs(row.unit, row.point, reading, supplyVolts);
  if (impossible !== null) return { kind: 'impossible', why: impossible };
  if (reading < row.least) return { kind: 'off', way: 'low' };
  return reading > row.most ? { kind: 'off', way: 'high' } : { kind: 'good' };
}

/** Why no board can show a reading; null = it can. */
export function impossibleAs(
  unit: Unit,
  point: SlipPoint,
  reading: number,
  supplyVolts: Volts,
): 'negative' | 'above the supply' | 'not a number' | 'too large' | null {
  if (!Number.isFinite(reading)) return 'not a number';
  switch (unit) {
    case 'V':
      // A reversed battery or probe shows as negative: worth asking again, except for the jack's few millivolts.
      if (reading < (point === 'jack dc' ? -supplyVolts : -0.1)) return 'negative';
      return reading > 1.1 * supplyVolts + 0.3 ? 'above the supply' : null;
    case 'A':
      if (reading < 0) return 'negative';
      return reading > 10 ? 'too large' : null;
    case 'Hz':
      if (reading < 0) return 'negative';
      return reading > 10e6 ? 'too large' : null;
  }
}

export type MeterReading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly read: string };

/** What a meter's usual largest mA range ends at: beyond it stands `OL`. */
const OVER_RANGE: Amperes = 0.2;

/** A reading as typed: `1.54`, `1,54 V`, `760 mV`; currents without a unit in mA, as meters show them; `OL` of a current. */
export function readMeter(text: string, unit: Unit): MeterReading {
  if (unit === 'A' && /^[o0]\.?l$/i.test(text.trim())) return { ok: true, value: OVER_RANGE };
  const match = /^([-−]?\d*[.,]?\d+)\s*([a-zA-Zµ]*)$/.exec(text.trim());
  const number = match === null ? Number.NaN : Number(match[1]!.replace('−', '-').replace(',', '.'));
  const scale = match === null ? undefined : SCALES[unit][match[2]!.toLowerCase()];
  return scale === undefined || !Number.isFinite(number)
    ? { ok: false, read: text }
    : { ok: true, value: number * scale };
}

const SCALES: Readonly<Record<Unit, Readonly<Record<string, number>>>> = {
  V: { '': 1, v: 1, mv: 1e-3 },
  A: { '': 1e-3, a: 1, ma: 1e-3, µa: 1e-6, ua: 1e-6 },
  Hz: { '': 1, hz: 1, khz: 1e3 },
};
