/**
 * Every RA, fixed part of RB, trimmer and capacitor of a drawer tried for one voice: those that bring the target
 * within the trimmer's travel with nominal parts are kept with their cost, the others counted by why they fail.
 */
import type { Target, VoiceParts, Wish } from '../design/pitch.ts';
import { DIELECTRICS } from '../parts/capacitors.ts';
import { TIMERS } from '../parts/timers.ts';
import { endOhms, TRIMMERS } from '../parts/trimmers.ts';
import type { VoiceId } from '../quantity/units.ts';
import { COMFORT, commonSquare, deviationShare, firstOrderReach, type ReachInputs } from './reach.ts';
import type { Parts } from './stock.ts';
import { type Chip, dutyAt, lawOf, middleHertz, rbFor } from './timing.ts';

export const MISS_KINDS = [
  'ra-too-small',
  'never-runs',
  'polarised',
  'rb-near-zero',
  'resistors-too-large',
  'too-low',
  'too-high',
  'duty',
  'short-stock',
] as const;
export type MissKind = (typeof MISS_KINDS)[number];

/** Combinations of one voice that fail for one reason, and the one that fails by least. */
export interface Miss {
  readonly kind: MissKind;
  readonly count: number;
  /** Where a measure of the failure exists: the parts, and by how much (cents of pitch; share of duty). */
  readonly nearest: { readonly parts: VoiceParts; readonly by: number } | null;
}

/** What a search weighs one voice's parts by; whole multiples of `UNIT`, so that sums are exact. */
export const UNIT = 1e-7;

/** Cents a degree at which tuning counts as half as bad as it can be. */
const STIFF_CENTS_PER_DEGREE = 10;

/** Cost of tuning, 0…1, from cents of pitch a degree of turn. */
export const tuningCost = (centsPerDegree: number): number =>
  centsPerDegree / (centsPerDegree + STIFF_CENTS_PER_DEGREE);

export interface Weights {
  readonly wish: Wish['weights'];
  /** Cost of one more different part, whole units. */
  readonly perPart: number;
  /** Price of each part as a share of the dearest kit; an unknown price counts as the dearest of its kind. */
  readonly prices: {
    readonly resistors: readonly number[];
    readonly trimmers: readonly number[];
    readonly capacitors: readonly number[];
  };
}

/** Different parts of a kit lie from three to eight; one step costs a fifth of the weight. */
export function weightsOf(wish: Wish['weights'], parts: Parts): Weights {
  const priced = (list: readonly { readonly price: number | null }[]): readonly number[] => {
    const dearest = Math.max(0, ...list.map(({ price }) => price ?? 0));
    return list.map(({ price }) => price ?? dearest);
  };
  const [resistors, trimmers, capacitors] = [parts.resistors, parts.trimmers, parts.capacitors].map(
    priced,
  ) as [readonly number[], readonly number[], readonly number[]];
  const kit = 4 * Math.max(0, ...resistors) + 2 * Math.max(0, ...trimmers) + 2 * Math.max(0, ...capacitors);
  const shares = (list: readonly number[]) => list.map((price) => (kit > 0 ? price / kit : 0));
  return {
    wish,
    perPart: Math.round(wish.fewerParts / 5 / UNIT),
    prices: {
      resistors: shares(resistors),
      trimmers: shares(trimmers),
      capacitors: shares(capacitors),
    },
  };
}

/** Four places in the lists of parts, as one number. */
export interface Codes {
  readonly resistors: number;
  readonly trimmers: number;
  readonly capacitors: number;
}

/** Places of RA, fixed part, trimmer and capacitor. */
export type Places = [ra: number, rbFixed: number, trimmer: number, capacitor: number];

export function placesOf(code: number, n: Codes, into: Places = [0, 0, 0, 0]): Places {
  let rest = code;
  into[3] = rest % n.capacitors;
  rest = (rest - into[3]) / n.capacitors;
  into[2] = rest % n.trimmers;
  rest = (rest - into[2]) / n.trimmers;
  into[1] = rest % n.resistors;
  into[0] = (rest - into[1]) / n.resistors;
  return into;
}

export function codesOf(parts: Parts): Codes {
  return {
    resistors: parts.resistors.length,
    trimmers: parts.trimmers.length,
    capacitors: parts.capacitors.length,
  };
}

export function voiceParts(parts: Parts, [ra, rbFixed, trimmer, capacitor]: Places): VoiceParts {
  const [a, b] = [parts.resistors[ra]!, parts.resistors[rbFixed]!];
  const [p, c] = [parts.trimmers[trimmer]!, parts.capacitors[capacitor]!];
  return {
    ra: { ohms: a.ohms, tolerance: a.tolerance },
    rbFixed: { ohms: b.ohms, tolerance: b.tolerance },
    trimmer: { part: p.part, ohms: p.ohms, tolerance: p.tolerance },
    capacitor: { farads: c.farads, dielectric: c.dielectric, tolerance: c.tolerance },
  };
}

/** What fits one voice: codes in rising order, and the cost of each in units. */
export interface VoiceFits {
  readonly codes: Float64Array;
  readonly costs: Float64Array;
  readonly tried: number;
  readonly misses: readonly Miss[];
}

export interface VoiceTask {
  readonly chip: Chip;
  readonly wish: Wish;
  readonly parts: Parts;
  readonly weights: Weights;
  readonly voice: VoiceId;
  readonly target: Target;
}

/** Tries everything; yields the share done after each RA. */
export function* fitsOf(task: VoiceTask): Generator<number, VoiceFits> {
  const { chip, wish, parts, weights, voice, target } = task;
  const { resistors, trimmers, capacitors } = parts;
  const n = codesOf(parts);
  const timer = TIMERS[chip.timer];
  const mostOhms = chip.railVolts / 6 / timer.thresholdAmperes;
  const middle = middleHertz(target);
  const counts = new Map<MissKind, number>(MISS_KINDS.map((kind) => [kind, 0]));
  const nearest = new Map<MissKind, { code: number; by: number }>();
  const count = (kind: MissKind, by: number) => counts.set(kind, counts.get(kind)! + by);
  const near = (kind: MissKind, code: number, by: number) => {
    const best = nearest.get(kind);
    if (best === undefined || by < best.by) nearest.set(kind, { code, by });
  };

  const ends = trimmers.map(({ part, ohms }) => endOhms(part, ohms));
  const perDegree = trimmers.map(({ part, ohms }, i) => (ohms - ends[i]!) / TRIMMERS[part].degrees);
  const usable = capacitors.map(({ dielectric }) => wish.polarised || !DIELECTRICS[dielectric].polarised);
  const refused = usable.filter((is) => !is).length;
  const common = capacitors.map(({ tolerance }) => commonSquare(chip.timer, tolerance));
  const smallest = new Float64Array(n.capacitors);
  const largest = new Float64Array(n.capacitors);
  const inputs: ReachInputs = {
    ownOhms: 0,
    factor: 0,
    raSwing: 0,
    fixedOhms: 0,
    fixedTolerance: 0,
    trimmerOhms: 0,
    trimmerTolerance: 0,
    endOhms: 0,
    farads: 0,
    commonSquare: 0,
    deviation: deviationShare(wish.law),
  };
  const short = (list: readonly { readonly quantity: number | null }[], at: number, each: number) => {
    const { quantity } = list[at]!;
    return quantity !== null && quantity < each * wish.kits;
  };
  const found = new Found();

  for (let ra = 0; ra < n.resistors; ra++) {
    const { ohms: raOhms, tolerance: raTolerance } = resistors[ra]!;
    const all = n.resistors * n.trimmers * n.capacitors;
    const law = lawOf(chip, chip.controlVolts[voice], raOhms);
    if (raOhms < timer.raMinOhms) count('ra-too-small', all);
    else if (law === null) count('never-runs', all);
    else {
      for (let c = 0; c < n.capacitors; c++) {
        smallest[c] = rbFor(law, capacitors[c]!.farads, target.highHertz);
        largest[c] = rbFor(law, capacitors[c]!.farads, target.lowHertz);
      }
      inputs.ownOhms = law.ownOhms;
      inputs.factor = law.factor;
      inputs.raSwing = law.highFactor * raOhms * raTolerance;
      for (let rb = 0; rb < n.resistors; rb++) {
        const { ohms: fixed, tolerance: fixedTolerance } = resistors[rb]!;
        inputs.fixedOhms = fixed;
        inputs.fixedTolerance = fixedTolerance;
        const shortR = short(resistors, ra, rb === ra ? 2 : 1) || short(resistors, rb, 1);
        for (let p = 0; p < n.trimmers; p++) {
          const { ohms, tolerance } = trimmers[p]!;
          const end = ends[p]!;
          const [least, most] = [fixed + end, fixed + ohms];
          if (least < timer.raMinOhms) {
            count('rb-near-zero', n.capacitors);
            continue;
          }
          if (raOhms + most > mostOhms) {
            count('resistors-too-large', n.capacitors);
            continue;
          }
          count('polarised', refused);
          inputs.trimmerOhms = ohms;
          inputs.trimmerTolerance = tolerance;
          inputs.endOhms = end;
          const base = ((ra * n.resistors + rb) * n.trimmers + p) * n.capacitors;
          for (let c = 0; c < n.capacitors; c++) {
            if (!usable[c]) continue;
            if (smallest[c]! < least) {
              count('too-low', 1);
              near('too-low', base + c, ratioOf(law, least, smallest[c]!));
              continue;
            }
            if (largest[c]! > most) {
              count('too-high', 1);
              near('too-high', base + c, ratioOf(law, largest[c]!, most));
              continue;
            }
            const { farads } = capacitors[c]!;
            const rbMiddle = rbFor(law, farads, middle);
            if (wish.duty) {
              const duty = dutyAt(law, raOhms, rbMiddle);
              const by = Math.max(wish.duty.least - duty, duty - wish.duty.most);
              if (by > 0) {
                count('duty', 1);
                near('duty', base + c, by);
                continue;
              }
            }
            if (shortR || short(trimmers, p, 1) || short(capacitors, c, 1)) {
              count('short-stock', 1);
              continue;
            }
            inputs.farads = farads;
            inputs.commonSquare = common[c]!;
            const reach = firstOrderReach(inputs, target, COMFORT.least, COMFORT.most);
            const sum = law.ownOhms + law.factor * rbMiddle;
            const touch = tuningCost((CENTS * law.factor * perDegree[p]!) / sum);
            const { prices, wish: w, perPart } = weights;
            const price =
              prices.resistors[ra]! + prices.resistors[rb]! + prices.trimmers[p]! + prices.capacitors[c]!;
            const own = Math.round(
              (w.surerReach * (1 - reach) + w.easierTuning * touch + w.cheaper * price) / UNIT,
            );
            found.add(base + c, own + perPart * (ra === rb ? 3 : 4));
          }
        }
      }
    }
    yield (ra + 1) / n.resistors;
  }
  const misses = MISS_KINDS.filter((kind) => counts.get(kind)! > 0).map((kind): Miss => {
    const best = nearest.get(kind);
    const by = best && (kind === 'duty' ? best.by : CENTS * Math.log(best.by));
    return {
      kind,
      count: counts.get(kind)!,
      nearest: best ? { parts: voiceParts(parts, placesOf(best.code, n)), by: by! } : null,
    };
  });
  return { ...found.arrays(), tried: n.resistors ** 2 * n.trimmers * n.capacitors, misses };
}

const CENTS = 1200 / Math.LN2;

/** Ratio of two periods of one law. */
function ratioOf(
  law: { readonly ownOhms: number; readonly factor: number },
  more: number,
  less: number,
): number {
  const below = law.ownOhms + law.factor * less;
  return below > 0 ? (law.ownOhms + law.factor * more) / below : Number.POSITIVE_INFINITY;
}

/** Two lists of numbers that grow together. */
class Found {
  #codes = new Float64Array(1024);
  #costs = new Float64Array(1024);
  #length = 0;

  add(code: number, cost: number): void {
    if (this.#length === this.#codes.length) {
      this.#codes = grown(this.#codes);
      this.#costs = grown(this.#costs);
    }
    this.#codes[this.#length] = code;
    this.#costs[this.#length++] = cost;
  }

  arrays(): { readonly codes: Float64Array; readonly costs: Float64Array } {
    return { codes: this.#codes.slice(0, this.#length), costs: this.#costs.slice(0, this.#length) };
  }
}

function grown(old: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const next = new Float64Array(2 * old.length);
  next.set(old);
  return next;
}
