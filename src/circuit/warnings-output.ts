/** Warnings about mixing, jack, load, supply and battery. SI units. */
import type { Design } from '../design/design.ts';
import { COMPARATORS } from '../parts/comparators.ts';
import { SUPPLIES } from '../parts/supplies.ts';
import { TIMERS } from '../parts/timers.ts';
import type { Volts } from '../quantity/units.ts';
import { pairOf, VOICES } from '../quantity/units.ts';
import type { Instrument } from './instrument.ts';
import { HEADPHONE_DB_PER_MILLIWATT, outputDraw } from './output.ts';
import { leastSourceVolts, railVolts } from './supply.ts';
import { type Warning, warn } from './warning.ts';
import { dipVolts } from './warnings-pitch.ts';

/** Both voices together, into a line input. */
const LINE_MOST_VOLTS: Volts = 1.5;
/** A player's output into headphones, rms. */
const HEADPHONE_MOST_VOLTS: Volts = 0.15;

export function outputWarnings(design: Design, instrument: Instrument): readonly Warning[] {
  const out: Warning[] = [];
  const { jack, level, jackCornerHertz, railVolts: rail } = instrument;
  const { mixOhms, coupling } = design.output;
  const rated = TIMERS[design.timer].outputAmperes;

  if (mixOhms === null)
    out.push(warn('outputs-joined', null, 'wrong', { amperes: jack.clashAmperes, ratedAmperes: rated }));
  const duty = pairOf((voice) => instrument.voices[voice].cycle.dutyCycle);
  const { peakAmperes } = outputDraw(design, rail, duty);
  if (peakAmperes > rated)
    out.push(warn('output-overloaded', null, 'wrong', { amperes: peakAmperes, ratedAmperes: rated }));

  if (level.headphones !== null) {
    const { watts, decibels } = level.headphones;
    if (decibels !== null && level.both.rmsVolts > HEADPHONE_MOST_VOLTS)
      out.push(
        warn('too-loud-headphones', null, 'danger', {
          rmsVolts: level.both.rmsVolts,
          mostVolts: HEADPHONE_MOST_VOLTS,
          watts,
          decibels,
          perMilliwatt: HEADPHONE_DB_PER_MILLIWATT,
        }),
      );
  } else if (level.both.peakToPeakVolts > LINE_MOST_VOLTS)
    out.push(
      warn('too-loud-line', null, 'wrong', {
        peakToPeakVolts: level.both.peakToPeakVolts,
        mostVolts: LINE_MOST_VOLTS,
      }),
    );

  const heard = VOICES.map((voice) => instrument.voices[voice].cycle.frequency).filter((f) => f > 0);
  const lowestHertz = Math.min(...heard);
  if (jackCornerHertz !== null && heard.length > 0 && jackCornerHertz > lowestHertz / 2)
    out.push(
      warn('thin-sound', null, 'caution', {
        cornerHertz: jackCornerHertz,
        lowestHertz,
        farads: ((jack.couplingFarads ?? 0) * jackCornerHertz * 2) / lowestHertz,
      }),
    );
  if (coupling === null) out.push(warn('dc-at-jack', null, 'wrong', { volts: level.dcVolts }));
  if (coupling?.kind === 'electrolytic')
    out.push(
      warn('coupling-polarity', null, 'caution', {
        volts: level.couplingVolts ?? 0,
        ratingVolts: ratingFor(design.supply.volts),
      }),
    );
  if (level.thumpSeconds !== null && level.thumpSeconds > 0.05 && level.thumpVolts > 0.001)
    out.push(warn('thump', null, 'note', { stepVolts: level.thumpVolts, seconds: level.thumpSeconds }));
  return out;
}

/** The next usual working voltage at or above 1.5 times the supply. */
function ratingFor(supply: Volts): Volts {
  return [6.3, 10, 16, 25].find((rating) => rating >= 1.5 * supply) ?? 35;
}

export function supplyWarnings(design: Design, instrument: Instrument): readonly Warning[] {
  const out: Warning[] = [];
  const { supply } = design;
  const { power, railVolts: rail } = instrument;
  const kind = SUPPLIES[supply.kind];
  const chips = [
    { part: 'timer', range: TIMERS[design.timer].supplyVolts },
    { part: 'comparator', range: COMPARATORS[design.comparator].supplyVolts },
  ] as const;
  const hungriest = power.states[power.hungriest];

  for (const { part, range } of chips) {
    if (hungriest.railVolts < range.min)
      out.push(
        warn('supply-below-range', null, 'wrong', {
          part,
          railVolts: hungriest.railVolts,
          leastVolts: range.min,
        }),
      );
    if (rail > range.max)
      out.push(warn('supply-above-range', null, 'danger', { part, railVolts: rail, mostVolts: range.max }));
  }
  const dip = dipVolts(design, rail);
  if (!supply.decoupled && TIMERS[design.timer].spikeAmperes > 0)
    out.push(warn('no-decoupling', null, 'wrong', { dipVolts: dip }));
  if (hungriest.sagVolts > 0.05 * railVolts(supply))
    out.push(
      warn('battery-sag', null, 'caution', {
        sagVolts: hungriest.sagVolts,
        amperes: hungriest.drain.total,
        sourceOhms: supply.sourceOhms,
      }),
    );
  if (kind.ampereHours === null) return out;
  if (hungriest.hours !== null && hungriest.hours < 24)
    out.push(
      warn('battery-hours', null, 'caution', {
        hours: hungriest.hours,
        amperes: hungriest.drain.total,
      }),
    );
  const chipVolts = leastSourceVolts(supply, design.timer, design.comparator);
  if (chipVolts > kind.endVolts)
    out.push(warn('battery-unused', null, 'caution', { chipVolts, emptyVolts: kind.endVolts }));
  if (!supply.diode) out.push(warn('no-diode', null, 'caution', { volts: supply.volts }));
  return out;
}
