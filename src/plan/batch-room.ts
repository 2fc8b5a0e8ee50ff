/**
 * A batch of kits in a room: seeded draws of cell, slope, resistors, trimmer and comparator offset. How many can be
 * set at all, how many are right at one common mark, where the right places lie, and what sorting the cells gains.
 * Every kit has its own seed, so that a batch may be drawn in pieces.
 */
import { cellSpeed } from '../circuit/cell.ts';
import { type Design, type ThresholdTrimmer, trimmersOf, type Voice } from '../design/design.ts';
import type { RoomBatch, Spread } from '../design/room.ts';
import type { Ripple } from '../light/ripple.ts';
import { CELLS } from '../parts/cells.ts';
import { gaussianFrom, uniformFrom } from '../quantity/random.ts';
import { type Fraction, type Pair, pairOf, type VoiceId } from '../quantity/units.ts';
import { type ConductanceBand, rippledBand } from './ripple-band.ts';
import { settingsFor, tippingRotations, type VoiceSetting } from './setting.ts';
import type { Disturbance } from './trip-lux.ts';
import { type BandReader, type Extremes, type SettingWindow, voicesOn, windowOf } from './window.ts';

/** One kit: for each trimmer fitted (A alone when shared) its window and its right place. */
export interface KitOutcome {
  readonly bin: number;
  readonly trimmers: readonly {
    readonly low: Fraction;
    readonly high: Fraction;
    readonly place: Fraction;
    /** The window less the width of the hysteresis at both edges. */
    readonly comfortable: boolean;
  }[];
}

/** Cells sorted into so many bins of equal ratio; both cells of a kit come from one bin. 1 = unsorted. */
export interface Sorting {
  readonly bins: number;
}

/** Draws the kits number `from` up to `from + count`. */
export function drawKits(
  design: Design,
  batch: RoomBatch,
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
  from: number,
  count: number,
  { bins }: Sorting = { bins: 1 },
): readonly KitOutcome[] {
  const bandFor = bandsFor(design, extremes, disturbance.ripple);
  return Array.from({ length: count }, (_, i) => {
    const bin = (from + i) % bins;
    const { kit, offsets } = drawnKit(design, batch, from + i, bin, bins);
    const settings = settingsFor(kit, offsets);
    return {
      bin,
      trimmers: trimmersOf(kit).map((trimmer) => {
        const voices = voicesOn(kit, trimmer);
        const window = windowOf(kit, trimmer, voices, settings, extremes, disturbance, bandFor);
        return {
          low: window.low.rotation,
          high: window.high.rotation,
          place: rightPlace(settings, voices, extremes),
          comfortable: isComfortable(window, settings, voices, extremes),
        };
      }),
    };
  });
}

export interface BatchVerdict {
  readonly kits: number;
  /** Every trimmer has a window: what setting each kit by itself gives. */
  readonly settableShare: Fraction;
  /** Every window keeps the width of the hysteresis free at both edges. */
  readonly comfortableShare: Fraction;
  /** Right with every trimmer at the common mark of its bin. */
  readonly rightAtMarkShare: Fraction;
  /** The marks: the middle one of the right places, for each bin and trimmer. */
  readonly marks: readonly (readonly Fraction[])[];
  /** Right places of the first trimmer: of a hundred kits, the fifth, the middle, the ninety-fifth. */
  readonly places: { readonly p5: Fraction; readonly p50: Fraction; readonly p95: Fraction };
}

export function batchVerdict(kits: readonly KitOutcome[]): BatchVerdict {
  const bins = 1 + kits.reduce((most, { bin }) => Math.max(most, bin), 0);
  const marks = Array.from({ length: bins }, (_, bin) => {
    const own = kits.filter((kit) => kit.bin === bin);
    const trimmers = own[0]?.trimmers ?? [];
    return trimmers.map((_each, i) =>
      quantile(
        own.map((kit) => kit.trimmers[i]!.place),
        0.5,
      ),
    );
  });
  const share = (is: (kit: KitOutcome) => boolean) =>
    kits.length === 0 ? 0 : kits.filter(is).length / kits.length;
  const places = kits.map(({ trimmers }) => trimmers[0]!.place);
  return {
    kits: kits.length,
    settableShare: share(({ trimmers }) => trimmers.every(({ low, high }) => low < high)),
    comfortableShare: share(({ trimmers }) => trimmers.every(({ comfortable }) => comfortable)),
    rightAtMarkShare: share(({ bin, trimmers }) =>
      trimmers.every(({ low, high }, i) => low < marks[bin]![i]! && marks[bin]![i]! < high),
    ),
    marks,
    places: { p5: quantile(places, 0.05), p50: quantile(places, 0.5), p95: quantile(places, 0.95) },
  };
}

export interface BatchComparison {
  readonly unsorted: BatchVerdict;
  readonly sorted: BatchVerdict;
}

/** The whole batch, and the same with the cells sorted into three bins. */
export function batchRoom(
  design: Design,
  batch: RoomBatch,
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
): BatchComparison {
  const draw = (bins: number) =>
    batchVerdict(drawKits(design, batch, extremes, disturbance, 0, batch.kits, { bins }));
  return { unsorted: draw(1), sorted: draw(3) };
}

function drawnKit(
  design: Design,
  { seed, spread, resistorTolerance, offsetVolts }: RoomBatch,
  index: number,
  bin: number,
  bins: number,
): { readonly kit: Design; readonly offsets: Pair<number> } {
  const unit = unitDraws(seed * 1_000_003 + index, spread);
  const off = (value: number, tolerance: Fraction) => value * (1 + tolerance * unit());
  const fixed = (ohms: number) => off(ohms, resistorTolerance);
  const voices = pairOf((voice): Voice => {
    const v = design.voices[voice];
    const { r10Ohms, gamma } = CELLS[v.cell.family];
    const [least, most] = [
      r10Ohms.min * (r10Ohms.max / r10Ohms.min) ** (bin / bins),
      r10Ohms.min * (r10Ohms.max / r10Ohms.min) ** ((bin + 1) / bins),
    ];
    return {
      ...v,
      cell: {
        family: v.cell.family,
        // Sellers sort by the band: no cell lies outside it.
        r10Ohms: (least + most) / 2 + ((most - least) / 2) * Math.max(-1, Math.min(1, unit())),
        gamma: Math.min(1, v.cell.gamma + gamma.spread * unit()),
      },
      divider: { ...v.divider, fixedOhms: fixed(v.divider.fixedOhms) },
      hysteresisOhms: v.hysteresisOhms === null ? null : fixed(v.hysteresisOhms),
      inputOhms: fixed(v.inputOhms),
      pullUpOhms: fixed(v.pullUpOhms),
    };
  });
  const trimmers = pairOf((id): ThresholdTrimmer => {
    const part = design.threshold.trimmers[id];
    const { trimmer } = part;
    return {
      topOhms: fixed(part.topOhms),
      trimmer: { ...trimmer, ohms: off(trimmer.ohms, trimmer.tolerance) },
      bottomOhms: fixed(part.bottomOhms),
    };
  });
  return {
    kit: { ...design, voices, threshold: { ...design.threshold, trimmers } },
    offsets: pairOf(() => offsetVolts * unit()),
  };
}

/** Draws within ±1: evenly, or normally with ±1 at two or three deviations. */
function unitDraws(seed: number, spread: Spread): () => number {
  if (spread === 'uniform') {
    const next = uniformFrom(seed);
    return () => 2 * next() - 1;
  }
  const next = gaussianFrom(seed);
  const deviations = spread === 'two-sigma' ? 2 : 3;
  return () => next() / deviations;
}

/** The place by the geometric mean of lit and shaded light, midway between the trips of both outputs and of the voices. */
function rightPlace(
  settings: Pair<VoiceSetting>,
  voices: readonly VoiceId[],
  extremes: Pair<Extremes>,
): Fraction {
  let sum = 0;
  let count = 0;
  for (const voice of voices) {
    const setting = settings[voice];
    const lux = Math.sqrt(extremes[voice].lit.lux * extremes[voice].shade.lux);
    const siemens = (lux / 10) ** setting.speed.gamma / setting.gate.r10Ohms;
    for (const high of [false, true])
      for (const place of tippingRotations(setting, { high, siemens, shift: 0 })) {
        sum += place;
        count++;
      }
  }
  return Math.min(1, Math.max(0, sum / count));
}

/** Whether a place is left with once more the hysteresis between it and either edge of the window. */
function isComfortable(
  { low, high }: SettingWindow,
  settings: Pair<VoiceSetting>,
  voices: readonly VoiceId[],
  extremes: Pair<Extremes>,
): boolean {
  const widthAt = (level: 'lit' | 'shade') =>
    Math.max(
      ...voices.map((voice) => {
        const setting = settings[voice];
        const siemens = (extremes[voice][level].lux / 10) ** setting.speed.gamma / setting.gate.r10Ohms;
        const at = (isHigh: boolean) => tippingRotations(setting, { high: isHigh, siemens, shift: 0 });
        const both = [...at(false), ...at(true)];
        return Math.max(...both) - Math.min(...both);
      }),
    );
  const ofEdge = ({ reason }: SettingWindow['low']) =>
    reason.kind === 'lit' || reason.kind === 'shade' ? widthAt(reason.kind) : 0;
  return low.rotation + ofEdge(low) <= high.rotation - ofEdge(high);
}

/** Slopes at which the ripple's band is worked out; between them it is read off the polynomial. */
const SLOPES = 7;

/** Relative to the steady conductance the band depends on the slope alone. */
function bandsFor(design: Design, extremes: Pair<Extremes>, ripple: Ripple | null): BandReader {
  const still = (setting: VoiceSetting, lux: number) => (lux / 10) ** setting.speed.gamma;
  if (ripple === null)
    return (setting, _level, lux) => {
      const y = still(setting, lux);
      return { low: y, high: y };
    };
  const tables = pairOf((voice) => {
    const { cell } = design.voices[voice];
    const { spread } = CELLS[cell.family].gamma;
    const reach = 2 * spread;
    const from = Math.max(0.3, cell.gamma - reach);
    const step = (Math.min(1, cell.gamma + reach) - from) / (SLOPES - 1);
    const tableOf = (lux: number): readonly ConductanceBand[] =>
      Array.from({ length: SLOPES }, (_, i) => {
        const gamma = from + i * step;
        const y = (lux / 10) ** gamma;
        const { low, high } = rippledBand(cellSpeed({ ...cell, gamma }), lux, ripple);
        return { low: Math.log(low / y), high: Math.log(high / y) };
      });
    return {
      from,
      step,
      lit: tableOf(extremes[voice].lit.lux),
      shade: tableOf(extremes[voice].shade.lux),
    };
  });
  return (setting, level, lux) => {
    const { from, step, [level]: table } = tables[setting.voice];
    const place = (setting.speed.gamma - from) / step;
    let [low, high] = [0, 0];
    for (let i = 0; i < SLOPES; i++) {
      let weight = 1;
      for (let k = 0; k < SLOPES; k++) if (k !== i) weight *= (place - k) / (i - k);
      low += weight * table[i]!.low;
      high += weight * table[i]!.high;
    }
    const y = still(setting, lux);
    return { low: y * Math.exp(low), high: y * Math.exp(high) };
  };
}

function quantile(values: readonly number[], share: Fraction): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}
