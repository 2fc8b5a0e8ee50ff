/**
 * The sensor's divider: which fixed resistor, and the cell above or below it. The node swings most between lit and
 * shaded light when the fixed resistor is the geometric mean of the cell's two resistances; the reference must stay
 * inside the comparator's common-mode range; and the trimmer should have degrees to spare between lit and shade.
 */
import { cellOhms } from '../circuit/cell.ts';
import { railVolts } from '../circuit/supply.ts';
import { placeCell, setDividerOhms } from '../design/commands.ts';
import { type CellPosition, type Design, thresholdFor } from '../design/design.ts';
import { TRIMMERS } from '../parts/trimmers.ts';
import type { Fraction, Ohms, Pair, VoiceId, Volts } from '../quantity/units.ts';
import { settingsFor } from './setting.ts';
import type { Disturbance } from './trip-lux.ts';
import { type Extremes, windowOf } from './window.ts';

export interface DividerChoice {
  readonly cell: CellPosition;
  readonly ohms: Ohms;
  /** Node in lit and in shaded light, without hysteresis on it. */
  readonly litVolts: Volts;
  readonly shadeVolts: Volts;
  /** Degrees of the trimmer between the setting for lit and that for shade, within its travel and the comparator's range. */
  readonly degrees: number;
  /** The part of the window lost to the common-mode range or an end stop, 0…1. */
  readonly lost: Fraction;
}

export interface DividerAdvice {
  /** √(R lit · R shade), before rounding to a value that is sold. */
  readonly meanOhms: Ohms;
  readonly now: DividerChoice;
  readonly best: DividerChoice;
  /** True when what is fitted has at least nine tenths of the best one's degrees. */
  readonly keep: boolean;
}

const E12 = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];

export function dividerAdvice(
  design: Design,
  voice: VoiceId,
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
): DividerAdvice {
  const { cell, divider } = design.voices[voice];
  const { lit, shade } = extremes[voice];
  const meanOhms = Math.sqrt(cellOhms(cell, lit.lux) * cellOhms(cell, shade.lux));
  const choiceOf = (position: CellPosition, ohms: Ohms) =>
    dividerChoice(design, voice, position, ohms, extremes, disturbance);
  const now = choiceOf(divider.cell, divider.fixedOhms);
  const nearest = nearestE12(meanOhms);
  const tried = (['bottom', 'top'] as const).flatMap((position) =>
    [-3, -2, -1, 0, 1, 2, 3].map((steps) => choiceOf(position, steppedE12(nearest, steps))),
  );
  const best = tried.reduce((most, next) => (next.degrees > most.degrees * 1.02 ? next : most), now);
  return { meanOhms, now, best, keep: now.degrees >= 0.9 * best.degrees };
}

function dividerChoice(
  design: Design,
  voice: VoiceId,
  cell: CellPosition,
  ohms: Ohms,
  extremes: Pair<Extremes>,
  disturbance: Disturbance,
): DividerChoice {
  const changed = setDividerOhms(voice, ohms)(placeCell(voice, cell)(design));
  const trimmer = design.threshold.arrangement === 'shared' ? 'A' : voice;
  const window = windowOf(changed, trimmer, [voice], settingsFor(changed), extremes, disturbance);
  const part = thresholdFor(design, voice);
  // The same voice as if the trimmer had no stops and the comparator no limit.
  const rail = railVolts(design.supply);
  const share = (lux: number) => {
    const r = cellOhms(design.voices[voice].cell, lux);
    return cell === 'top' ? ohms / (ohms + r) : r / (ohms + r);
  };
  const [litVolts, shadeVolts] = [
    rail * share(extremes[voice].lit.lux),
    rail * share(extremes[voice].shade.lux),
  ];
  const usable = Math.max(0, window.high.rotation - window.low.rotation);
  const total = part.topOhms + part.trimmer.ohms + part.bottomOhms;
  const whole = (Math.abs(litVolts - shadeVolts) / rail) * (total / part.trimmer.ohms);
  return {
    cell,
    ohms,
    litVolts,
    shadeVolts,
    degrees: usable * TRIMMERS[part.trimmer.part].degrees,
    lost: Math.min(1, Math.max(0, 1 - usable / whole)),
  };
}

function nearestE12(ohms: Ohms): number {
  const place = Math.round(Math.log10(ohms) * 12);
  return [place - 1, place, place + 1].reduce((best, next) =>
    Math.abs(Math.log(valueE12(next) / ohms)) < Math.abs(Math.log(valueE12(best) / ohms)) ? next : best,
  );
}

function steppedE12(place: number, steps: number): Ohms {
  return valueE12(place + steps);
}

/** The place-th value counted from 1 Ω. */
function valueE12(place: number): Ohms {
  const decade = Math.floor(place / 12);
  return Number((E12[place - 12 * decade]! * 10 ** decade).toPrecision(3));
}
